//! Names the shared library by the number of its C interface, so that the loader refuses another.

include!("src/abi.rs");

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-changed=src/abi.rs");
    let os = std::env::var("CARGO_CFG_TARGET_OS").unwrap_or_default();
    let family = std::env::var("CARGO_CFG_TARGET_FAMILY").unwrap_or_default();
    if os == "macos" {
        println!("cargo::rustc-cdylib-link-arg=-Wl,-install_name,@rpath/libseamwright.{SW_ABI_VERSION}.dylib");
    } else if family == "unix" {
        println!("cargo::rustc-cdylib-link-arg=-Wl,-soname,libseamwright.so.{SW_ABI_VERSION}");
    }
}
