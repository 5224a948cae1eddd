//! The style sheet: at an address that names its content, small, and free of what may not be in it.

use holewright_pages::assets::{icon, style_sheet};

use crate::{body, visit};

#[test]
fn the_pages_name_the_current_file_and_it_may_be_kept_for_ever() {
    let page = body(200, "/");
    for address in [style_sheet(), icon()] {
        assert!(page.contains(address), "{address}");
        let answer = visit(address);
        assert_eq!(answer.status, 200);
        assert_eq!(answer.header("cache-control"), Some("public, max-age=31536000, immutable"));
        assert!(answer.header("content-type").is_some_and(|kind| kind.contains("charset=utf-8")));
    }
}

#[test]
fn an_old_hash_gets_the_current_file_and_may_not_be_kept() {
    let answer = visit("/static/holewright-0123456789abcdef.css");
    assert_eq!(answer.status, 200);
    assert_eq!(answer.header("cache-control"), Some("no-cache"));
    assert_eq!(answer.body, visit(style_sheet()).body);
}

#[test]
fn other_files_are_not_there() {
    for address in [
        "/static/holewright.css",
        "/static/holewright-x.css",
        "/static/other-00.css",
        "/static/../Cargo.toml",
        "/static/",
    ] {
        body(404, address);
    }
}

#[test]
fn the_style_sheet_keeps_to_the_look() {
    let answer = visit(style_sheet());
    let css = answer.text();
    for absent in ["gradient", "box-shadow: 0", "@import", "url(", "@font-face", "http"] {
        assert!(!css.contains(absent), "{absent}");
    }
    for present in [
        "prefers-color-scheme: dark",
        "prefers-contrast: more",
        "forced-colors: active",
        "@media print",
        ":focus-visible",
        "tabular-nums",
        ":target",
    ] {
        assert!(css.contains(present), "{present}");
    }
    // Within 8 kB in brotli; uncompressed it may be about three times that.
    assert!(css.len() < 24_000, "{} bytes", css.len());
}

#[test]
fn words_and_figures_stand_out_from_the_paper_in_both_schemes() {
    let answer = visit(style_sheet());
    let css = answer.text();
    let light = colours(css.split(":root {").nth(1).unwrap());
    let dark = colours(css.split("prefers-color-scheme: dark").nth(1).unwrap());
    for (scheme, colours) in [("light", light), ("dark", dark)] {
        let colour = |name: &str| colours.iter().find(|(held, _)| held == name).unwrap().1;
        for ground in ["paper", "field", "lit"] {
            // Figures are ink or accent: 7 to 1, for sunlight and a dirty screen.
            for (name, least) in [
                ("ink", 7.0),
                ("accent", 7.0),
                ("soft", 4.5),
                ("caution", 4.5),
                ("danger", 4.5),
                ("good", 4.5),
            ] {
                let ratio = contrast(colour(name), colour(ground));
                assert!(ratio >= least, "{scheme}: {name} on {ground} is {ratio:.1} to 1");
            }
        }
        // The edge of a control.
        for ground in ["paper", "field"] {
            let ratio = contrast(colour("edge"), colour(ground));
            assert!(ratio >= 3.0, "{scheme}: edge on {ground} is {ratio:.1} to 1");
        }
    }
}

/// The colours a block names, `--ink: #14233c`.
fn colours(block: &str) -> Vec<(String, [f64; 3])> {
    let block = block.split('}').next().unwrap();
    let hex = |text: &str| f64::from(u8::from_str_radix(text, 16).unwrap());
    block
        .split(';')
        .filter_map(|line| {
            let (name, value) = line.split_once(": #")?;
            let name = name.trim().rsplit("--").next()?.to_owned();
            Some((name, [hex(&value[0..2]), hex(&value[2..4]), hex(&value[4..6])]))
        })
        .collect()
}

/// Contrast by WCAG 2.2.
fn contrast(one: [f64; 3], other: [f64; 3]) -> f64 {
    let light = |colour: [f64; 3]| {
        let [red, green, blue] = colour.map(|channel| {
            let channel = channel / 255.0;
            if channel <= 0.04045 {
                channel / 12.92
            } else {
                libm::pow((channel + 0.055) / 1.055, 2.4)
            }
        });
        0.2126 * red + 0.7152 * green + 0.0722 * blue
    };
    let (one, other) = (light(one), light(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}
