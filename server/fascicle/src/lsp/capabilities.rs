//! What the client can do, and what we offer it.

use fascicle_analysis::lines::Encoding;
use tower_lsp::lsp_types as lsp;

use super::requests::{code_actions, commands, tokens};
use super::to_proto;

/// What the client can do, as far as we act on it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[allow(clippy::struct_excessive_bools)]
pub struct Can {
    /// It asks for diagnostics itself.
    pub pull_diagnostics: bool,
    /// It asks for diagnostics again when told to.
    pub refresh_diagnostics: bool,
    /// It asks for other things again when told to: lenses, hints, tokens.
    pub refresh: (bool, bool, bool),
    /// It shows places that belong to a diagnostic.
    pub related_information: bool,
    /// It can show what a diagnostic speaks of as given up.
    pub deprecated_tag: bool,
    /// It shows a document when asked to.
    pub show_document: bool,
    /// It makes files as a part of an edit.
    pub create_files: bool,
    /// It takes edits with the version that they are for.
    pub document_changes: bool,
    /// It resolves the edit of a code action when it is chosen.
    pub resolve_edit: bool,
    /// It takes links in answer to a search for a definition.
    pub definition_links: bool,
    /// It shows headings within headings.
    pub nested_symbols: bool,
    /// It has its own way to show documents of the `fascicle:` scheme.
    pub entry_documents: bool,
    /// It shows pictures in Markdown, which it says by `"pictures": true` in its `initializationOptions`.
    pub pictures: bool,
    /// It shows progress that we begin.
    pub progress: bool,
    /// It answers for its settings.
    pub configuration: bool,
    /// It watches files for us.
    pub watch: bool,
    /// It tells of changed settings when asked to, and some clients do not else.
    pub settings_on_demand: bool,
    /// It takes a range for all items of a completion.
    pub default_range: bool,
}

impl Can {
    /// Reads the client's capabilities.
    pub fn read(params: &lsp::InitializeParams) -> Self {
        let client = &params.capabilities;
        let text = client.text_document.as_ref();
        let workspace = client.workspace.as_ref();
        let edit = workspace.and_then(|workspace| workspace.workspace_edit.as_ref());
        let action = text.and_then(|text| text.code_action.as_ref());
        let flag = |flag: Option<bool>| flag.unwrap_or(false);
        let options = params.initialization_options.as_ref();
        let option = |name: &str| flag(options.and_then(|options| options.get(name)?.as_bool()));
        Self {
            pull_diagnostics: text.is_some_and(|text| text.diagnostic.is_some()),
            refresh_diagnostics: flag(workspace.and_then(|workspace| workspace.diagnostic.as_ref()?.refresh_support)),
            refresh: (
                flag(workspace.and_then(|workspace| workspace.code_lens.as_ref()?.refresh_support)),
                flag(workspace.and_then(|workspace| workspace.inlay_hint.as_ref()?.refresh_support)),
                flag(workspace.and_then(|workspace| workspace.semantic_tokens.as_ref()?.refresh_support)),
            ),
            related_information: flag(text.and_then(|text| text.publish_diagnostics.as_ref()?.related_information)),
            deprecated_tag: text
                .and_then(|text| text.publish_diagnostics.as_ref()?.tag_support.as_ref())
                .is_some_and(|tags| tags.value_set.contains(&lsp::DiagnosticTag::DEPRECATED)),
            show_document: client
                .window
                .as_ref()
                .and_then(|window| window.show_document.as_ref())
                .is_some_and(|show| show.support),
            create_files: edit
                .and_then(|edit| edit.resource_operations.as_ref())
                .is_some_and(|kinds| kinds.contains(&lsp::ResourceOperationKind::Create)),
            document_changes: flag(edit.and_then(|edit| edit.document_changes)),
            resolve_edit: action
                .and_then(|action| action.resolve_support.as_ref())
                .is_some_and(|resolve| resolve.properties.iter().any(|property| property == "edit")),
            definition_links: flag(text.and_then(|text| text.definition.as_ref()?.link_support)),
            nested_symbols: flag(
                text.and_then(|text| text.document_symbol.as_ref()?.hierarchical_document_symbol_support),
            ),
            entry_documents: option("entryDocuments"),
            pictures: option("pictures"),
            progress: flag(client.window.as_ref().and_then(|window| window.work_done_progress)),
            configuration: flag(workspace.and_then(|workspace| workspace.configuration)),
            watch: flag(
                workspace.and_then(|workspace| workspace.did_change_watched_files.as_ref()?.dynamic_registration),
            ),
            settings_on_demand: flag(
                workspace.and_then(|workspace| workspace.did_change_configuration.as_ref()?.dynamic_registration),
            ),
            default_range: text
                .and_then(|text| text.completion.as_ref()?.completion_list.as_ref()?.item_defaults.as_ref())
                .is_some_and(|defaults| defaults.iter().any(|default| default == "editRange")),
        }
    }
}

/// Documents, settings and vocabulary files, as a pattern.
pub const FILES: &str = "**/*.{md,markdown,mdx,qmd,rmd,mdown,vtt,srt,txt,text,toml}";

/// The files of which we are told when they come, get another name, or go in the editor; folders, too.
fn files() -> lsp::FileOperationRegistrationOptions {
    let filter = |glob: &str, kind: lsp::FileOperationPatternKind| lsp::FileOperationFilter {
        scheme: Some("file".to_owned()),
        pattern: lsp::FileOperationPattern { glob: glob.to_owned(), matches: Some(kind), options: None },
    };
    let filters =
        vec![filter(FILES, lsp::FileOperationPatternKind::File), filter("**", lsp::FileOperationPatternKind::Folder)];
    lsp::FileOperationRegistrationOptions { filters }
}

/// What we offer.
pub fn ours(encoding: Encoding) -> lsp::ServerCapabilities {
    lsp::ServerCapabilities {
        position_encoding: Some(to_proto::encoding(encoding)),
        text_document_sync: Some(lsp::TextDocumentSyncCapability::Options(lsp::TextDocumentSyncOptions {
            open_close: Some(true),
            change: Some(lsp::TextDocumentSyncKind::INCREMENTAL),
            save: Some(lsp::TextDocumentSyncSaveOptions::Supported(true)),
            ..Default::default()
        })),
        hover_provider: Some(lsp::HoverProviderCapability::Simple(true)),
        completion_provider: Some(lsp::CompletionOptions {
            resolve_provider: Some(true),
            trigger_characters: Some(vec![" ".to_owned()]),
            ..Default::default()
        }),
        definition_provider: Some(lsp::OneOf::Left(true)),
        declaration_provider: Some(lsp::DeclarationCapability::Simple(true)),
        type_definition_provider: Some(lsp::TypeDefinitionProviderCapability::Simple(true)),
        references_provider: Some(lsp::OneOf::Left(true)),
        document_highlight_provider: Some(lsp::OneOf::Left(true)),
        document_symbol_provider: Some(lsp::OneOf::Left(true)),
        workspace_symbol_provider: Some(lsp::OneOf::Left(true)),
        code_action_provider: Some(lsp::CodeActionProviderCapability::Options(lsp::CodeActionOptions {
            code_action_kinds: Some(vec![
                lsp::CodeActionKind::QUICKFIX,
                lsp::CodeActionKind::REFACTOR_REWRITE,
                lsp::CodeActionKind::SOURCE,
                lsp::CodeActionKind::SOURCE_FIX_ALL,
                code_actions::FIX_COURSE,
            ]),
            resolve_provider: Some(true),
            ..Default::default()
        })),
        code_lens_provider: Some(lsp::CodeLensOptions { resolve_provider: Some(false) }),
        rename_provider: Some(lsp::OneOf::Right(lsp::RenameOptions {
            prepare_provider: Some(true),
            work_done_progress_options: lsp::WorkDoneProgressOptions::default(),
        })),
        document_link_provider: Some(lsp::DocumentLinkOptions {
            resolve_provider: Some(false),
            work_done_progress_options: lsp::WorkDoneProgressOptions::default(),
        }),
        folding_range_provider: Some(lsp::FoldingRangeProviderCapability::Simple(true)),
        selection_range_provider: Some(lsp::SelectionRangeProviderCapability::Simple(true)),
        linked_editing_range_provider: Some(lsp::LinkedEditingRangeServerCapabilities::Simple(true)),
        call_hierarchy_provider: Some(lsp::CallHierarchyServerCapability::Simple(true)),
        inlay_hint_provider: Some(lsp::OneOf::Right(lsp::InlayHintServerCapabilities::Options(
            lsp::InlayHintOptions { resolve_provider: Some(true), ..Default::default() },
        ))),
        semantic_tokens_provider: Some(
            lsp::SemanticTokensOptions {
                legend: tokens::legend(),
                range: Some(true),
                full: Some(lsp::SemanticTokensFullOptions::Delta { delta: Some(true) }),
                ..Default::default()
            }
            .into(),
        ),
        diagnostic_provider: Some(lsp::DiagnosticServerCapabilities::Options(lsp::DiagnosticOptions {
            identifier: Some("fascicle".to_owned()),
            inter_file_dependencies: true,
            workspace_diagnostics: true,
            ..Default::default()
        })),
        execute_command_provider: Some(lsp::ExecuteCommandOptions {
            commands: commands::ALL.iter().map(|command| (*command).to_owned()).collect(),
            ..Default::default()
        }),
        workspace: Some(lsp::WorkspaceServerCapabilities {
            workspace_folders: Some(lsp::WorkspaceFoldersServerCapabilities {
                supported: Some(true),
                change_notifications: Some(lsp::OneOf::Left(true)),
            }),
            file_operations: Some(lsp::WorkspaceFileOperationsServerCapabilities {
                did_create: Some(files()),
                did_rename: Some(files()),
                did_delete: Some(files()),
                ..Default::default()
            }),
        }),
        ..Default::default()
    }
}
