// The number of the C interface, apart from the release: read by the build script for the SONAME and exported in the header.
/// The number of the C interface that this header describes; compare it with `sw_abi_version()`.
///
/// It rises when a program built with an older header would no longer run rightly. 0 promises nothing yet.
pub const SW_ABI_VERSION: u32 = 0;
