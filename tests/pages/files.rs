//! The files beside the pages: the same rows and the same figures, and drawings complete alone.

use std::collections::HashMap;

use holewright_core::tables::{drills, materials, threads};

use crate::{body, inside, moves, visit};

/// A row of a file by its column names.
type Row = HashMap<String, String>;

fn csv(address: &str) -> Vec<Row> {
    let text = body(200, address);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let names: Vec<String> = reader.headers().unwrap().iter().map(String::from).collect();
    let row = |record: csv::StringRecord| {
        names.iter().cloned().zip(record.iter().map(String::from)).collect()
    };
    // The reader refuses a row with more or fewer cells than the first.
    reader.records().map(|record| row(record.unwrap())).collect()
}

/// The cells of the table with this caption, as read on the page.
fn table(page: &str, caption: &str) -> Vec<Vec<String>> {
    let table = page.split(&format!("<caption id=\"{caption}\">")).nth(1).unwrap();
    let rows = table.split("</table>").next().unwrap().split("<tbody>").nth(1).unwrap();
    rows.split("<tr").skip(1).map(cells).collect()
}

fn cells(row: &str) -> Vec<String> {
    let row = row.split_once('>').unwrap().1.replace("<th ", "<td ").replace("</th>", "</td>");
    row.split("<td").skip(1).map(|cell| text(cell.split_once('>').unwrap().1)).collect()
}

/// The words of a cell, without what only a lit row or a screen reader says.
fn text(cell: &str) -> String {
    let mut words = String::new();
    let mut rest = cell.split("</td>").next().unwrap();
    while let Some((before, tag)) = rest.split_once('<') {
        words.push_str(before);
        let (tag, after) = tag.split_once('>').unwrap();
        rest = match tag {
            "span class=\"cue\"" | "span class=\"hidden\"" => {
                after.split_once("</span>").unwrap().1
            }
            // The verdict on a drill stands in its cell and in a column of its own in the file.
            tag if tag.starts_with("span class=\"mark under") => {
                after.split_once("</span>").unwrap().1
            }
            _ => after,
        };
    }
    words.push_str(rest);
    let words = words.replace("&#38;", "&").replace("&#34;", "\"").replace("&#39;", "'");
    words.trim().to_owned()
}

/// What a page prints where a file has a bare number or nothing.
fn as_a_file(cell: &str) -> String {
    match cell {
        "–" => String::new(),
        cell => cell.trim_start_matches('+').replace('−', "-"),
    }
}

/// Every row of the page in the file and none besides, each named column alike, figure by figure.
#[track_caller]
fn same(page: &str, caption: &str, file: &str, columns: &[(usize, &str)]) {
    let shown = table(&body(200, page), caption);
    let rows = csv(file);
    assert_eq!(shown.len(), rows.len(), "{file}: rows");
    assert!(!rows.is_empty(), "{file}: empty");
    for (shown, row) in shown.iter().zip(&rows) {
        for (place, name) in columns {
            let cell = as_a_file(&shown[*place]);
            assert_eq!(
                row[*name].to_lowercase(),
                cell.to_lowercase(),
                "{file}: {name} of {shown:?}"
            );
        }
    }
}

#[test]
fn the_systems_are_as_on_the_page() {
    let columns = [
        (0, "name"),
        (1, "mark"),
        (2, "sizes"),
        (3, "thread_angle_deg"),
        (4, "used_for"),
        (5, "standard"),
    ];
    same("/threads", "systems", "/threads.csv", &columns);
}

#[test]
fn every_systems_sizes_are_as_on_the_page() {
    for system in threads::systems() {
        let page = format!("/threads/{}", system.slug);
        let shown = body(200, &page);
        let mut names = vec!["designation"];
        if shown.contains(">Tapping size</th>") {
            names.extend(["tapping_drill", "clearance_drill", "tapping_engagement_percent"]);
        }
        names.extend(["major_mm", "major_in", "pitch_mm", "threads_per_inch", "effective_mm"]);
        names.extend(["effective_in", "minor_mm", "minor_in"]);
        if shown.contains(">Minor of the nut, mm</th>") {
            names.extend(["minor_internal_mm", "minor_internal_in"]);
        }
        let columns: Vec<(usize, &str)> = names.into_iter().enumerate().collect();
        same(&page, "sizes", &format!("{page}.csv"), &columns);
        for row in csv(&format!("{page}.csv")) {
            assert_eq!(visit(&format!("/threads/{}/{}", row["system"], row["size"])).status, 200);
        }
    }
}

/// The verdict stands in the drill's own cell, and in a column of its own in the file.
#[test]
fn a_verdict_is_in_the_cell_of_its_drill() {
    for address in ["/threads/ba", "/threads/metric", "/threads/unc?material=copper"] {
        let page = body(200, address);
        let (path, query) = address.split_once('?').unwrap_or((address, ""));
        let rows = csv(&format!("{path}.csv?{query}"));
        let shown: Vec<&str> = page.split("<tr id=\"").skip(1).collect();
        assert_eq!(shown.len(), rows.len());
        let chosen = shown.iter().zip(&rows).filter(|(_, row)| !row["tapping_drill"].is_empty());
        for (shown, row) in chosen {
            let cell = shown.split("<td").nth(1).unwrap();
            let verdict = match row["tapping_within_standard"].as_str() {
                "yes" => ">within</span>",
                "no" => ">beyond</span>",
                _ => ">no limit</span>",
            };
            assert!(cell.contains(verdict), "{address}: {row:?} {cell}");
        }
    }
}

#[test]
fn tapping_drills_are_as_on_the_page() {
    let sixty = [
        (0, "drill"),
        (1, "engagement_percent"),
        (2, "diameter_mm"),
        (3, "diameter_in"),
        (4, "engagement_of_five_eighths_h_percent"),
    ];
    for (thread, columns) in [
        ("/threads/ba/5", &sixty[..4]),
        ("/threads/metric/m3", &sixty[..]),
        ("/threads/unc/4-40", &sixty[..]),
        ("/threads/me-40/1-4", &sixty[..4]),
    ] {
        same(thread, "drills", &format!("{thread}.csv"), columns);
    }
}

#[test]
fn a_thread_without_tapping_drills_gives_its_lists_or_its_dimensions() {
    assert_eq!(visit("/threads/npt/1-4.svg").status, 200);
    same("/threads/npt/1-4", "lists", "/threads/npt/1-4.csv", &[(1, "drill")]);
    for thread in threads::all() {
        let rows = csv(&format!("{}.csv", thread.path()));
        assert!(!rows.is_empty(), "{}", thread.designation);
        let drawn_from = ["engagement_percent", "list", "major_mm"];
        assert!(drawn_from.iter().any(|column| rows[0].contains_key(*column)));
    }
}

#[test]
fn the_chart_and_its_cuts_are_as_on_the_page() {
    let columns = [(0, "drill"), (1, "diameter_mm"), (2, "diameter_in"), (3, "series")];
    for query in
        ["", "?from=2mm&to=3mm&series=metric", "?from=1%2F16+in&to=.125in", "?from=No.+60&to=5"]
    {
        same(&format!("/drills{query}"), "chart", &format!("/drills.csv{query}"), &columns);
    }
    assert_eq!(csv("/drills.csv").len(), drills::all().len());
    // A cut in inches and the same in millimetres keep the same drills.
    assert_eq!(
        csv("/drills.csv?from=.0625in&to=.125in"),
        csv("/drills.csv?from=1.5875&to=3.175mm")
    );
    assert_eq!(visit("/drills.csv?from=nonsense").status, 422);
}

#[test]
fn a_drills_neighbours_are_as_on_the_page() {
    let columns = [
        (0, "drill"),
        (1, "diameter_mm"),
        (2, "larger_by_mm"),
        (3, "larger_by_thou"),
        (4, "series"),
    ];
    for drill in
        ["/drills/number/46", "/drills/metric/2.05", "/drills/letter/f", "/drills/fraction/7-64"]
    {
        same(drill, "near", &format!("{drill}.csv"), &columns);
    }
}

#[test]
fn the_materials_are_as_on_the_page() {
    let page = body(200, "/materials");
    assert!(page.contains("% of full thread depth, hand tapping"), "the basis of the aim");
    let families = page.matches("<caption id=\"").map(|_| ()).count();
    let captions = page.split("<caption id=\"").skip(1).map(|rest| rest.split('"').next().unwrap());
    let shown: Vec<_> = captions.flat_map(|caption| table(&page, caption)).collect();
    let rows = csv("/materials.csv");
    assert_eq!((shown.len(), rows.len()), (materials::all().len(), materials::all().len()));
    assert_eq!(families, materials::by_family().len());
    for (shown, row) in shown.iter().zip(&rows) {
        for (place, name) in [(0, "name"), (1, "aim_percent")] {
            assert_eq!(row[name].to_lowercase(), shown[place].to_lowercase(), "{name} {shown:?}");
        }
        // The page has the first two marks, the file has all.
        let two: Vec<&str> = row["designations"].split(", ").take(2).collect();
        assert_eq!(two.join(", "), shown[2], "{shown:?}");
        assert_eq!(visit(&format!("/materials/{}", row["material"])).status, 200);
    }
}

#[test]
fn a_plans_steps_are_as_on_the_page() {
    let query = "thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm&series=number%2Cmetric";
    let page = body(200, &format!("/plan?{query}"));
    let steps: Vec<&str> = inside(&page, "ol").split("<li>").skip(1).collect();
    let rows = csv(&format!("/plan.csv?{query}"));
    assert_eq!(steps.len(), rows.len());
    for (step, row) in steps.iter().zip(&rows) {
        assert!(step.contains(&format!("<h3>{}", row["action"])), "{row:?}");
        for (name, figure) in [
            ("Size", figure(row, "diameter_mm", " mm")),
            ("Stop", figure(row, "stop_mm", " mm")),
            ("Depth", figure(row, "depth_mm", " mm").filter(|_| row["stop_mm"].is_empty())),
            ("Tap ends at", figure(row, "tip_mm", " mm")),
            ("Speed", figure(row, "speed", "")),
            ("Feed", figure(row, "feed_mm_per_rev", " mm/rev")),
        ] {
            let shown = step
                .split(&format!("<dt>{name}</dt><dd>"))
                .nth(1)
                .map(|cell| cell.split('<').next().unwrap().trim().trim_start_matches("about "));
            let figure = figure.as_deref().map(|figure| figure.trim_start_matches("about "));
            assert_eq!(shown, figure, "{name} of {row:?}");
        }
        let depth = if row["stop_mm"].is_empty() { "depth_in" } else { "stop_in" };
        for (name, unit) in [("diameter_in", " in"), (depth, " in")] {
            if let Some(inches) = figure(row, name, unit) {
                assert!(step.contains(&inches), "{inches} of {row:?}");
            }
        }
    }
}

fn figure(row: &Row, column: &str, unit: &str) -> Option<String> {
    Some(&row[column]).filter(|cell| !cell.is_empty()).map(|cell| format!("{cell}{unit}"))
}

#[test]
fn a_file_says_what_it_is_and_what_it_is_called() {
    let answer = visit("/threads/ba/5.csv");
    assert_eq!(answer.header("content-type"), Some("text/csv; charset=utf-8; header=present"));
    assert_eq!(
        answer.header("content-disposition"),
        Some("attachment; filename=\"holewright-threads-ba-5.csv\"")
    );
    // RFC 4180: CRLF behind every line and nowhere else.
    assert!(answer.text().ends_with("\r\n"));
    assert_eq!(answer.text().matches('\n').count(), answer.text().matches("\r\n").count());
    let plan = visit("/plan.csv?thread=5ba&material=gunmetal");
    assert_eq!(
        plan.header("content-disposition"),
        Some("attachment; filename=\"holewright-plan.csv\"")
    );
}

#[test]
fn no_cell_of_any_file_starts_a_formula() {
    let files = ["/threads.csv", "/materials.csv", "/drills.csv", "/drills/number/46.csv"];
    let systems = threads::systems().iter().map(|system| format!("/threads/{}.csv", system.slug));
    for file in files.into_iter().map(String::from).chain(systems) {
        for row in csv(&file) {
            for (name, cell) in row {
                let number = cell.parse::<f64>().is_ok();
                let formula = cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']);
                assert!(number || !formula, "{file}: {name} is {cell:?}");
            }
        }
    }
}

#[test]
fn only_a_final_ending_asks_for_a_file() {
    // 2.05 is a drill, and its file has the ending behind that.
    assert!(body(200, "/drills/metric/2.05").starts_with("<!doctype html>"));
    assert!(body(200, "/drills/metric/2.05.csv").starts_with("series,size,"));
    for missing in [
        "/plan.csv",
        "/plan.svg",
        "/drills.svg",
        "/search.csv",
        "/.csv",
        "/threads/.csv",
        "/threads/ba/5.csv/x",
        "/threads/ba/99.csv",
        "/threads/ba/5.csv.csv",
        "/calculators.csv",
    ] {
        assert_eq!(visit(missing).status, 404, "{missing}");
    }
    assert_eq!(visit("/plan.csv?thread=nonsense&material=gunmetal").status, 422);
}

#[test]
fn a_file_moves_with_its_page() {
    moves("/threads/metric/m3x0.5.csv", "/threads/metric/m3.csv");
    moves("/Threads/BA/5.SVG", "/threads/ba/5.svg");
    moves("/drills/metric/3.0.csv", "/drills/metric/3.csv");
    moves("/plan.csv?thread=5ba&material=gunmetal&over=", "/plan.csv?thread=5ba&material=gunmetal");
}

#[test]
fn a_drawing_is_complete_alone() {
    let plan = "/plan.svg?thread=5ba&material=gunmetal&hole=blind&depth=8mm";
    for (file, page) in [
        ("/threads/ba/5.svg", "/threads/ba/5".to_owned()),
        ("/threads/npt/1-4.svg", "/threads/npt/1-4".to_owned()),
        (plan, plan.replace(".svg", "")),
    ] {
        let answer = visit(file);
        assert_eq!(
            (answer.status, answer.header("content-type")),
            (200, Some("image/svg+xml; charset=utf-8"))
        );
        let drawing = roxmltree::Document::parse(answer.text()).unwrap();
        let root = drawing.root_element();
        assert_eq!(root.tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
        for attribute in ["viewBox", "width", "height", "stroke", "font-family"] {
            assert!(root.has_attribute(attribute), "{file}: {attribute}");
        }
        for name in ["title", "desc"] {
            assert!(
                root.children()
                    .any(|child| child.has_tag_name(("http://www.w3.org/2000/svg", name)))
            );
        }
        let outside = ["href", "style", "onload"];
        let bare = |node: roxmltree::Node<'_, '_>| {
            !node.attributes().any(|held| outside.contains(&held.name()))
        };
        assert!(drawing.descendants().all(bare), "{file}: something from elsewhere");
        assert!(body(200, &page).contains(answer.text()), "{file} is the page's own drawing");
    }
}

#[test]
fn pages_link_their_files() {
    for (page, file) in [
        ("/threads", "/threads.csv"),
        ("/threads/ba", "/threads/ba.csv"),
        ("/threads/ba/5", "/threads/ba/5.csv"),
        ("/threads/ba/5", "/threads/ba/5.svg"),
        ("/drills?from=2mm&to=3mm", "/drills.csv?from=2mm&#38;to=3mm"),
        ("/drills/metric/2.05", "/drills/metric/2.05.csv"),
        ("/materials", "/materials.csv"),
        ("/plan?thread=5ba&material=gunmetal", "/plan.csv?thread=5ba&#38;material=gunmetal"),
        ("/plan?thread=5ba&material=gunmetal", "/plan.svg?thread=5ba&#38;material=gunmetal"),
    ] {
        assert!(body(200, page).contains(&format!("href=\"{file}\"")), "{page}: {file}");
    }
}
