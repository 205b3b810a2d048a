//! What tells one version of a job file from another.

use sha2::{Digest as _, Sha256};
use std::fmt::Write as _;

/// The first twelve hexadecimal digits of the SHA-256 (FIPS 180-4) of the job file's bytes, in threes of four.
#[must_use]
pub fn fingerprint(job: &str) -> String {
    let digest = Sha256::digest(job.as_bytes());
    let mut text = String::with_capacity(14);
    for (i, byte) in digest.iter().take(6).enumerate() {
        if i > 0 && i % 2 == 0 {
            text.push('-');
        }
        // Writing to a string cannot fail.
        let _ = write!(text, "{byte:02x}");
    }
    text
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_is_the_head_of_sha_256() {
        // FIPS 180-4, example "abc": ba7816bf 8f01cfea ... (NIST, Examples with intermediate values, SHA256.pdf).
        assert_eq!(super::fingerprint("abc"), "ba78-16bf-8f01");
    }
}
