//! Writes the JavaScript, its types and the module for the web from the built WASM file.
//!
//! `cargo run -p takeoff-wasm-bindgen -- WASM_FILE OUT_DIR`
//!
//! The generator is used as a library of exactly the version of `wasm-bindgen` in the lock file, so
//! that nobody has to install a second program of the right version.
use std::env;
use std::process::ExitCode;

use wasm_bindgen_cli_support::Bindgen;

fn main() -> ExitCode {
    let [wasm, out] = match <[String; 2]>::try_from(env::args().skip(1).collect::<Vec<_>>()) {
        Ok(paths) => paths,
        Err(_) => {
            eprintln!("usage: takeoff-wasm-bindgen WASM_FILE OUT_DIR");
            return ExitCode::from(2);
        }
    };
    let mut bindgen = Bindgen::new();
    bindgen.input_path(wasm).out_name("tilepost").typescript(true).omit_default_module_path(false);
    match bindgen.web(true).and_then(|bindgen| bindgen.generate(&out)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error:?}");
            ExitCode::FAILURE
        }
    }
}
