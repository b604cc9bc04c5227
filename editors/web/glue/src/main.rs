//! Writes the JavaScript that stands between the page and the compiled analysis.
//!
//! `fascicle-web-glue IN.wasm FOLDER` leaves `fascicle_web.js` and `fascicle_web_bg.wasm` in the folder.

#![forbid(unsafe_code)]

use std::process::ExitCode;

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let (Some(input), Some(folder)) = (arguments.next(), arguments.next()) else {
        eprintln!("usage: fascicle-web-glue IN.wasm FOLDER");
        return ExitCode::from(2);
    };
    let made = wasm_bindgen_cli_support::Bindgen::new()
        .input_path(input)
        .web(true)
        .and_then(|bindgen| bindgen.typescript(true).generate(folder));
    match made {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error:#}");
            ExitCode::FAILURE
        }
    }
}
