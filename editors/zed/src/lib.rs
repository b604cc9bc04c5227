//! Tells the editor how to start the language server: the program on the `PATH`, or the one that the settings name.

use zed_extension_api::{self as zed, LanguageServerId, Result, settings::LspSettings};

struct Fascicle;

impl zed::Extension for Fascicle {
    fn new() -> Self {
        Self
    }

    fn language_server_command(&mut self, id: &LanguageServerId, worktree: &zed::Worktree) -> Result<zed::Command> {
        let named = LspSettings::for_worktree(id.as_ref(), worktree)?.binary.and_then(|binary| binary.path);
        let command = named.or_else(|| worktree.which("fascicle")).ok_or(
            "fascicle is not on the PATH; install it by `cargo install --path server/fascicle`, or set \
             lsp.fascicle.binary.path",
        )?;
        Ok(zed::Command { command, args: vec!["serve".into()], env: worktree.shell_env() })
    }

    fn language_server_workspace_configuration(
        &mut self,
        id: &LanguageServerId,
        worktree: &zed::Worktree,
    ) -> Result<Option<zed::serde_json::Value>> {
        Ok(LspSettings::for_worktree(id.as_ref(), worktree)?.settings)
    }
}

zed::register_extension!(Fascicle);
