//! Whether the disk has room. A small write may still fit where a note no longer does, so a probe that
//! writes one row shows too little.

use std::path::Path;

/// What must be free: a few of the longest notes with their log.
const LEAST_BYTES: u64 = 1024 * 1024;

/// Whether there is room for another few notes; also where the system cannot say.
pub(super) fn is_there(folder: &Path) -> bool {
    #[cfg(unix)]
    if let Ok(disk) = rustix::fs::statvfs(folder) {
        return disk.f_bavail.saturating_mul(disk.f_frsize) >= LEAST_BYTES;
    }
    true
}
