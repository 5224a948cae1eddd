//! A QR code as a drawing in the page: what a telephone reads off the screen or off a printed slip.

use qrcode::QrCode;
use qrcode::render::svg::Color;

use crate::Error;

/// The drawing of this text, in black on white in either scheme.
pub(super) fn drawing(text: &str) -> Result<String, Error> {
    let code = QrCode::new(text.as_bytes()).map_err(|error| Error::Internal(error.into()))?;
    let file = code.render::<Color<'_>>().min_dimensions(224, 224).build();
    // The line that opens a file of its own does not belong inside a page.
    let drawing = file.split_once("?>").map_or(file.as_str(), |(_, drawing)| drawing);
    let named = "<svg class=\"qr\" role=\"img\" aria-label=\"The link as a QR code\" ";
    Ok(drawing.replacen("<svg ", named, 1))
}
