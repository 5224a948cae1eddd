//! What members write comes out as text, never as markup, formula or query: S30, S31, S32, S39.

use std::time::Duration;

use holewright_server::rules::notes::fields::{DONE, TEXT, TITLE};
use holewright_server::rules::notes::markdown::{extract, html, plain};
use holewright_server::rules::notes::wording;
use roxmltree::Document;

use super::club::{Club, Right};
use crate::html::{Tag, read};
use crate::markup::check_fragment;

const ALLOWED: [&str; 17] = [
    "a",
    "blockquote",
    "br",
    "code",
    "del",
    "em",
    "h3",
    "h4",
    "h5",
    "h6",
    "hr",
    "li",
    "ol",
    "p",
    "pre",
    "strong",
    "ul",
];

/// A text costs no more than so many honest notes of the greatest length.
const DEAREST: u32 = 10;

/// How long this thread has had a core: what else runs on the machine does not count.
pub(crate) fn on_a_core() -> Duration {
    // The system brings the figure up to date when the thread gives way.
    std::thread::yield_now();
    let read = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap();
    Duration::from_nanos(read.split(' ').next().unwrap().parse().unwrap())
}

/// What it costs to make HTML of this: the least of a few times, since the first may be cold.
fn cost(markdown: &str) -> Duration {
    let once = |_| {
        let began = on_a_core();
        let _ = html(markdown);
        on_a_core() - began
    };
    (0..3).map(once).min().unwrap()
}

/// Only allowed tags with allowed attributes come of it.
#[track_caller]
pub(crate) fn check_tags(markdown: &str) {
    let html = html(markdown);
    let start: String = markdown.chars().take(40).collect();
    let page = read(&html);
    for Tag { name, attributes, .. } in &page.tags {
        assert!(ALLOWED.contains(&name.as_str()), "{start}: <{name}> in {html}");
        for (attribute, value) in attributes {
            match (name.as_str(), attribute.as_str()) {
                ("a", "href") => {
                    // Letters, digits and three marks before a colon are a scheme; else it is a path.
                    let scheme =
                        value.trim_start().split_once(':').map(|(scheme, _)| scheme.to_lowercase());
                    let scheme = scheme.filter(|scheme| {
                        scheme.starts_with(|c: char| c.is_ascii_alphabetic() || c.is_control())
                            && scheme.chars().all(|c| {
                                c.is_ascii_alphanumeric() || "+.-".contains(c) || c.is_control()
                            })
                    });
                    let is_plain = scheme.is_none_or(|scheme| {
                        ["http", "https", "mailto"].contains(&scheme.as_str())
                    });
                    assert!(is_plain, "{start}: {value}");
                }
                ("a", "rel") => assert_eq!(value, "nofollow ugc noopener"),
                ("ol", "start") => assert!(value.parse::<u64>().is_ok(), "{value}"),
                _ => panic!("{start}: {attribute} on <{name}>"),
            }
        }
        if name == "a" {
            assert!(attributes.iter().any(|(name, _)| name == "rel"), "{start}: {html}");
        }
    }
}

/// Markdown that was written to break out, or to take long.
fn hostile() -> Vec<String> {
    let markup = [
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "<svg/onload=alert(1)>",
        "<base href=//evil><form action=//evil><input name=q></form>",
        "<style>*{display:none}</style><iframe srcdoc='<script>'></iframe>",
        "[a](javascript:alert(1)) [b](JaVaScRiPt:alert(1)) [c](data:text/html,<script>)",
        "[a](java\tscript:alert(1)) [b](&#106;avascript:alert(1)) [c](vbscript:x)",
        "<javascript:alert(1)> <https://club.test/\"onmouseover=alert(1)>",
        "![image](https://evil/x.png \"title\" onerror=x) ![](javascript:x)",
        "[titled](https://a.test \"title\") [again][x]\n\n[x]: /threads 'title'",
        "[nested [link](https://a.test)](https://b.test)",
        "# <b onclick=x>title</b> {#id .class onclick=x}",
        "[x]: javascript:alert(1)\n\n[x]",
        "<a id=main name=body href=# class=skip style=color:red>x</a>",
        "&lt;script&gt;alert(1)&lt;/script&gt; &#60;img src=x&#62;",
        "`<script>` ``` <b> ```\n\n```html\"onload=x\n</code></pre><script>x</script>\n```",
        "<!-- comment --> <![CDATA[ x ]]> <?php x ?> <!DOCTYPE html>",
        "<plaintext><textarea><title><noscript><xmp>",
        "<math><mtext><table><mglyph><style><!--</style><img title=\"--&gt;&lt;img src=1 onerror=alert(1)&gt;\">",
    ];
    let endless = [
        ("[", 100_000),
        (">", 10_000),
        ("> ", 10_000),
        ("- ", 5_000),
        ("*a_", 30_000),
        ("**", 30_000),
        ("`", 30_000),
        ("![", 50_000),
        ("[a](", 25_000),
        ("<", 100_000),
        ("<a ", 30_000),
        ("&", 100_000),
        ("1. ", 5_000),
        ("\\", 100_000),
        ("1/4 BA mm # ", 8_000),
        ("3.3 mm, No. 43, 4 BA ", 5_000),
        ("| a |\n|---|\n", 5_000),
        ("a\n===\n", 5_000),
    ];
    let deep: String = (0..200).map(|depth| format!("{}- item\n", "  ".repeat(depth))).collect();
    let starred = format!("{}x{}", "*".repeat(9_000), "*".repeat(9_000));
    markup
        .map(str::to_owned)
        .into_iter()
        .chain(endless.map(|(piece, count)| piece.repeat(count)))
        .chain([deep, starred])
        .collect()
}

#[test]
fn s30_no_markdown_makes_markup_that_is_not_allowed() {
    for markdown in hostile() {
        check_tags(&markdown);
        let start: String = markdown.chars().take(40).collect();
        check_fragment(&read(&html(&wording::text(&markdown))), &start);
    }
}

#[test]
fn s30_no_markdown_costs_much_more_than_an_honest_note() {
    let honest =
        cost(&"Opened with a **3.3 mm** drill, then 4 BA by hand in gunmetal.\n".repeat(400));
    for markdown in hostile() {
        let cost = cost(&markdown);
        let start: String = markdown.chars().take(40).collect();
        assert!(cost < DEAREST * honest, "{start}: {cost:?}, an honest note {honest:?}");
    }
}

#[test]
#[ignore = "wants an optimised build: tests/run --soak"]
fn s30_no_markdown_takes_fifty_milliseconds() {
    for markdown in hostile() {
        let cost = cost(&markdown);
        let start: String = markdown.chars().take(40).collect();
        assert!(cost < Duration::from_millis(50), "{start}: {cost:?}");
    }
}

#[test]
fn s30_raw_markup_is_shown_as_it_was_typed() {
    for (markdown, expected) in [
        ("<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;"),
        ("a <b>bold</b> word", "a &lt;b&gt;bold&lt;/b&gt; word"),
        ("![a tap](x.png)", "a tap"),
    ] {
        assert!(html(markdown).contains(expected), "{markdown}: {}", html(markdown));
    }
    // Neither does a reference bring back the marks that no reader sees.
    assert_eq!(html("a&#8238;b&#x6;c&#x2066;").trim(), "<p>abc</p>");
    assert_eq!(html("# Top\n\n###### Least").trim(), "<h3>Top</h3>\n<h6>Least</h6>");
}

#[test]
fn figures_in_a_note_lead_to_their_pages() {
    for (markdown, address) in [
        ("a 3.3 mm hole", Some("/drills/metric/3.3")),
        ("3.3mm", Some("/drills/metric/3.3")),
        ("(No. 43)", Some("/drills/number/43")),
        ("#43.", Some("/drills/number/43")),
        ("tapped 4 BA,", Some("/threads/ba/4")),
        ("4BA", Some("/threads/ba/4")),
        ("BA 4", Some("/threads/ba/4")),
        ("BSW 1/4", Some("/threads/bsw/1-4")),
        ("an M3 tap", Some("/threads/metric/m3")),
        ("1/4 x 40 ME", Some("/threads/me-40/1-4")),
        ("7/64 in", Some("/drills/fraction/7-64")),
        ("43", None),
        ("in 1943 or so", None),
        ("1/4", None),
        ("`4 BA`", None),
        ("    4 BA in a code block", None),
        ("step 3 in the list", None),
        ("2 of them", None),
    ] {
        let found = html(markdown);
        match address {
            Some(address) => {
                assert!(found.contains(&format!("href=\"{address}\"")), "{markdown}: {found}")
            }
            None => assert!(!found.contains("<a "), "{markdown}: {found}"),
        }
    }
    let linked = html("[see 4 BA here](https://club.test/x)");
    assert_eq!(linked.matches("<a ").count(), 1, "{linked}");
}

#[test]
fn the_words_alone_are_without_marks() {
    assert_eq!(plain("# A *b*\n\n- c `d`\n- e\n\n[f](https://g.test)"), "A b c d e f");
    assert_eq!(extract("one two three", 8), "one two …");
    assert_eq!(extract("one two", 8), "one two");
}

/// Text in a page that would be a node if it were not escaped.
const PAYLOAD: &str = "\"'><script>alert(1)</script><img src=x onerror=alert(2)>&amp;{{7*7}}";

#[tokio::test]
async fn s31_every_text_field_comes_out_as_text() {
    let club = Club::open().await;
    let author = club.join(&format!("A {}", &PAYLOAD[..40]), Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let fields = [TITLE, TEXT].into_iter().chain(DONE).map(|field| (field.name, PAYLOAD));
    let mut fields: Vec<(&str, &str)> = fields.collect();
    fields.push(("on", "gunmetal"));
    let note = club.send_in(&author, &fields).await;
    let page = format!("/notes/{note}");
    let mut bodies = vec![
        club.get("/queue", Some(&moderator)).await.body,
        club.get(&page, Some(&author)).await.body,
        club.get(&format!("{page}/edit"), Some(&author)).await.body,
        club.get("/notes/mine", Some(&author)).await.body,
    ];
    club.decide(&moderator, note, ("pass", "")).await;
    club.post(
        &format!("{page}/verdict"),
        Some(&other),
        &[("found", "worked"), ("material", PAYLOAD), ("size", PAYLOAD)],
    )
    .await;
    let version = club.version(note, "shown").await.to_string();
    let correction = [("version", version.as_str()), ("correction", PAYLOAD)];
    club.post(&format!("{page}/correct"), Some(&moderator), &correction).await;
    let mut preview = fields.clone();
    preview.push(("do", "preview"));
    bodies.push(club.post("/notes/new", Some(&author), &preview).await.body);
    let mut wrong = fields.clone();
    wrong.retain(|(name, _)| *name != "on");
    wrong.extend([("on", PAYLOAD), ("do", "send")]);
    bodies.push(club.post("/notes/new", Some(&author), &wrong).await.body);
    bodies.push(club.post("/notes/new", None, &wrong).await.body);
    let query = "%22%27%3E%3Cscript%3Ealert(1)%3C/script%3E";
    for path in [
        page.as_str(),
        "/notes",
        "/materials/gunmetal",
        "/notes?q=alert",
        "/search?q=alert",
        &format!("{page}/history"),
        &format!("/notes?q={query}"),
        &format!("/notes?on={query}"),
        &format!("/search?q={query}"),
    ] {
        bodies.push(club.get(path, None).await.body);
    }
    club.post(&format!("{page}/report"), Some(&other), &[("danger", PAYLOAD)]).await;
    bodies.push(club.get("/queue", Some(&moderator)).await.body);
    club.decide(&moderator, note, ("settle", "")).await;
    let mut seen = 0;
    for body in &bodies {
        for Tag { name, attributes, .. } in &read(body).tags {
            assert!(name != "script" && name != "img", "{body}");
            assert!(!attributes.iter().any(|(name, _)| name.starts_with("on")), "{body}");
        }
        seen += usize::from(body.contains("&#60;script&#62;") || body.contains("&lt;script&gt;"));
    }
    assert!(seen >= bodies.len() - 1, "{seen} of {} show it", bodies.len());

    let feed = club.get("/notes.atom", None).await.body;
    let feed = Document::parse(&feed).unwrap();
    let entry = feed.descendants().find(|node| node.has_tag_name("entry")).unwrap();
    let child = |name: &str| entry.descendants().find(|node| node.tag_name().name() == name);
    assert_eq!(child("title").unwrap().text().unwrap(), PAYLOAD);
    let content = child("content").unwrap().text().unwrap();
    assert!(read(content).tags.iter().all(|tag| ALLOWED.contains(&tag.name.as_str())), "{content}");

    let json = club.get("/notes.json", None).await.json();
    assert_eq!(json["notes"][0]["title"], PAYLOAD);
    assert_eq!(json["notes"][0]["machine"], PAYLOAD);
    let csv = club.get("/notes.csv", None).await.body;
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let row = reader.records().next().unwrap().unwrap();
    // The text begins with a quotation mark: no formula, so nothing is put before it.
    assert_eq!(&row[2], PAYLOAD);
    assert_eq!(&row[16], PAYLOAD);
}

#[tokio::test]
async fn s39_text_cells_are_no_formulas_and_numbers_stay_numbers() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for start in [
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\u{200b}=1+1",
        "\u{ad}=1",
        "\u{3164}=1",
        "\u{feff} =1",
        "＝1+1",
    ] {
        let fields = [("title", start), ("text", start), ("material", start), ("depth", start)];
        club.shown(&author, &moderator, &fields).await;
    }
    let csv = club.get("/notes.csv", None).await;
    assert_eq!(csv.header("content-type"), "text/csv; charset=utf-8");
    assert!(csv.header("content-disposition").contains("shop-notes-2027-01-15.csv"));
    assert!(csv.body.contains("\r\n"), "RFC 4180");
    let mut reader = csv::Reader::from_reader(csv.body.as_bytes());
    let columns = reader.headers().unwrap().clone();
    let mut rows = 0;
    for row in reader.records() {
        let row = row.unwrap();
        rows += 1;
        for (column, cell) in columns.iter().zip(&row) {
            assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{column}: {cell}");
            if ["title", "text", "material", "depth"].contains(&column) {
                assert!(cell.starts_with('\''), "{column}: {cell}");
            }
            if ["id", "worked", "did_not"].contains(&column) {
                assert!(cell.parse::<i64>().is_ok(), "{column}: {cell}");
            }
        }
    }
    assert_eq!(rows, 9);
}

#[tokio::test]
async fn s32_no_word_of_a_search_is_taken_for_a_command() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = [("title", "100% of it_all"), ("text", "AND NEAR title: 3.3 mm O'Hara")];
    let note = club.shown(&author, &moderator, &fields).await;
    let page = format!("\"/notes/{note}\"");
    for (typed, finds) in [
        ("AND", true),
        ("NEAR", true),
        ("NEAR(\"a\" \"b\", 5)", false),
        ("title:", true),
        ("title:x", false),
        ("\"", false),
        ("\"\"\"", false),
        ("*", false),
        ("^100", true),
        ("100%", true),
        ("%", false),
        ("_", false),
        ("it_all", true),
        ("O'Hara", true),
        ("'; DROP TABLE note; --", false),
        ("near -title", true),
        ("(((", false),
        ("3.3", true),
        ("3.4", false),
        ("a OR b", false),
        // The note has the word "title".
        ("{title text} : x", true),
        ("\u{0}", false),
        ("\u{2}x\u{3}", false),
    ] {
        let query = form_urlencoded::byte_serialize(typed.as_bytes()).collect::<String>();
        for path in ["/notes", "/search", "/api/v1/search"] {
            let answer = club.get(&format!("{path}?q={query}"), None).await;
            let status = answer.status.as_u16();
            assert!([200, 303, 404, 422].contains(&status), "{path} {typed}: {status}");
            if path == "/notes" {
                assert_eq!(answer.body.contains(&page), finds, "{typed}");
            }
        }
    }
    let long = "x".repeat(20_000);
    let status = club.get(&format!("/notes?q={long}"), None).await.status.as_u16();
    assert!([200, 414, 431].contains(&status), "{status}");
    assert_eq!(club.count("SELECT count(*) FROM note").await, 1);
}
