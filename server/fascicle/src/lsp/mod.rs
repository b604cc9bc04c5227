//! The language server: protocol in, analysis asked, protocol out.
//!
//! No protocol type leaves this folder. A message comes through [`transport`], is given to the service in [`server`], which
//! takes a [`state::View`] of the document and hands it to a function of [`requests`]; that asks `fascicle-analysis` and
//! turns the plain answer into the protocol's by [`to_proto`].

mod additions;
mod capabilities;
mod document;
mod everywhere;
mod from_proto;
mod indexer;
mod library;
mod publish;
mod requests;
mod server;
mod state;
mod to_proto;
mod transport;

use std::process::ExitCode;
use std::sync::Arc;

use tokio::sync::Notify;

/// How many threads answer requests.
const WORKERS: usize = 4;

/// Serves one client on standard input and output until it leaves.
pub fn serve() -> ExitCode {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .max_blocking_threads(WORKERS)
        .enable_time()
        .build();
    let runtime = match runtime {
        Ok(runtime) => runtime,
        Err(error) => {
            eprintln!("fascicle: cannot start: {error}");
            return ExitCode::from(2);
        }
    };
    let gone = Arc::new(Notify::new());
    let code = runtime.block_on(async {
        let output = transport::writer(Arc::clone(&gone));
        let (service, socket, session) = server::service(Arc::clone(&gone), output.clone());
        let complete = move |method: &str, result: &mut serde_json::Value| {
            if let Some(session) = &session {
                additions::complete(session, method, result);
            }
        };
        transport::serve(service, socket, output, gone, complete).await
    });
    runtime.shutdown_background();
    code
}
