//! The style sheet and the icon, embedded, each at an address that names its content.

use std::sync::LazyLock;

use super::Reply;
use super::reply::content_type;

/// The style sheet's address: `/static/holewright-<hash>.css`.
#[must_use]
pub fn style_sheet() -> &'static str {
    &STYLE_SHEET.address
}

/// The icon's address: `/static/holewright-<hash>.svg`.
#[must_use]
pub fn icon() -> &'static str {
    &ICON.address
}

/// One embedded file.
struct Asset {
    kind: &'static str,
    extension: &'static str,
    body: &'static str,
    address: String,
}

const FOLDER_AND_STEM: &str = "/static/holewright-";

static STYLE_SHEET: LazyLock<Asset> = LazyLock::new(|| {
    asset("text/css; charset=utf-8", ".css", include_str!("../../static/holewright.css"))
});

static ICON: LazyLock<Asset> = LazyLock::new(|| {
    asset("image/svg+xml; charset=utf-8", ".svg", include_str!("../../static/holewright.svg"))
});

fn asset(kind: &'static str, extension: &'static str, body: &'static str) -> Asset {
    let address = format!("{FOLDER_AND_STEM}{:016x}{extension}", fnv_1a(body.as_bytes()));
    Asset { kind, extension, body, address }
}

/// Answers an asset's address. A hash that is not today's gets today's file, not to be kept: a
/// page saved last year still finds its style.
pub(super) fn answer(path: &str) -> Option<Reply> {
    let hash_and_extension = path.strip_prefix(FOLDER_AND_STEM)?;
    let asset: &Asset = [&*STYLE_SHEET, &*ICON].into_iter().find(|asset| {
        hash_and_extension
            .strip_suffix(asset.extension)
            .is_some_and(|hash| hash.bytes().all(|byte| byte.is_ascii_hexdigit()))
    })?;
    let keep =
        if path == asset.address { "public, max-age=31536000, immutable" } else { "no-cache" };
    let mut headers = content_type(asset.kind);
    headers.push(("cache-control", keep.to_owned()));
    Some(Reply { status: 200, headers, body: asset.body.into() })
}

/// FNV-1a, 64 bits: small, the same in every build, and enough to tell two style sheets apart.
fn fnv_1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}
