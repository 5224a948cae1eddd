//! Random and hostile strings from a seed: what scanners send, what slips of the pen look like,
//! and noise.

/// Markup, other languages' grammar, paths, numbers at their ends. Markup says `hwx`, so that it is
/// known again.
const HOSTILE: [&str; 64] = [
    "",
    " ",
    "\0",
    "\r\nset-cookie: hwx=1",
    "\t\u{b}\u{c}",
    "\u{feff}",
    "\u{202e}",
    "\u{2028}",
    "e\u{301}",
    "٣ BA",
    "５ＢＡ",
    "🔩",
    "𝟓",
    "ﬃ",
    "İ",
    "ẞ",
    "½",
    "¼ BSF",
    "<hwx onerror=hwx()>",
    "\"><hwx>",
    "'><hwx>",
    "</title><hwx>",
    "</select></option><hwx>",
    "<!--hwx-->",
    "<![cdata[<hwx>",
    "&lt;hwx&gt;",
    "&#60;hwx&#62;",
    "javascript:hwx()",
    "{{7*7}}",
    "${7*7}",
    "{% include \"x\" %}",
    "' OR '1'='1",
    "'; DROP TABLE reference_entry; --",
    "\"*^NEAR",
    "%",
    "%%",
    "%2",
    "%zz",
    "%00",
    "_",
    "\\",
    "../../../../etc/passwd",
    "..%2f..%2f",
    "//evil.example/",
    "/\\evil.example",
    "https://evil.example",
    "nan",
    "inf",
    "-inf",
    "-0",
    "0",
    "1e308",
    "1e999",
    "1e-999",
    "0x1p3",
    "1/0",
    "0/0",
    "9223372036854775808",
    "340282366920938463463374607431768211456",
    "0.000000000000000000001",
    "-2.65mm",
    "1-60-1-60",
    "1-6x0mm",
    "0-1000000x0.000001mm",
];

/// Pieces of what makes sense: put together at random they nearly do.
const PLAUSIBLE: [&str; 40] = [
    "5", "1/4", "7/64", "M3", "0.5", "2,05", ".081", "64", "BA", "ba", "BSF", "BSW", "UNC", "ME",
    "x", "×", " x ", "-", ",", " ", "mm", "in", "\"", "thou", "tpi", "ths", "No.", "#", "letter",
    "number", "metric", "fraction", "blind", "through", "gunmetal", "brass", "close", "free",
    "forming", "°",
];

/// A source of chance that gives the same for the same seed (splitmix64).
#[derive(Debug)]
pub(crate) struct Chance(pub(crate) u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number below this one.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        usize::try_from(self.next() % u64::try_from(end).unwrap()).unwrap()
    }

    fn one<'a>(&mut self, of: &[&'a str]) -> &'a str {
        of[self.below(of.len())]
    }

    /// A string, not always of text.
    pub(super) fn string(&mut self) -> Vec<u8> {
        match self.below(100) {
            0..30 => self.one(&HOSTILE).into(),
            30..55 => self.pieces(&PLAUSIBLE),
            55..70 => self.pieces(&[&HOSTILE[..], &PLAUSIBLE].concat()),
            70..82 => self.number().into_bytes(),
            82..90 => self.letters().into_bytes(),
            90..98 => (0..self.below(40)).map(|_| self.next().to_le_bytes()[0]).collect(),
            _ => {
                let piece = self.pieces(&[&HOSTILE[..], &PLAUSIBLE].concat());
                piece.repeat(1 + self.below(200))
            }
        }
    }

    fn pieces(&mut self, of: &[&str]) -> Vec<u8> {
        (0..1 + self.below(5)).map(|_| self.one(of)).collect::<String>().into()
    }

    /// A number of any size, sometimes with a unit.
    fn number(&mut self) -> String {
        let unit = self.one(&["", "", "mm", "in", " thou", "\"", "°", " rpm", "%"]);
        match self.below(4) {
            0 => format!("{}{unit}", f64::from_bits(self.next())),
            1 => format!("{}/{}{unit}", self.below(200), self.below(70)),
            2 => format!("{:e}{unit}", f64::from_bits(self.next())),
            _ => format!("{}.{}{unit}", self.below(60), self.below(1000)),
        }
    }

    /// Characters of any script.
    fn letters(&mut self) -> String {
        let any =
            |chance: &mut Self| char::from_u32(u32::try_from(chance.below(0x11_0000)).unwrap());
        (0..self.below(30)).filter_map(|_| any(self)).collect()
    }

    /// A string as it stands in an address: all in percent codes, or as much as may be left bare.
    pub(super) fn encoded(&mut self, string: &[u8], bare: &[u8]) -> String {
        let bare = if self.below(3) == 0 { bare } else { b"" };
        let code = |byte: &u8| match byte {
            byte if byte.is_ascii_alphanumeric() || bare.contains(byte) => {
                char::from(*byte).to_string()
            }
            byte => format!("%{byte:02x}"),
        };
        string.iter().map(code).collect()
    }
}
