//! The table that holds the program against a security standard, `tests/asvs.md`: each requirement
//! stands in it once, and what it names is there.

use std::collections::{BTreeMap, BTreeSet};

use super::{read, relative, rooted, sources};

const TABLE: &str = "tests/asvs.md";
const NUMBERS: &str = "tests/published/asvs-5.0.0-level-2.csv";

/// What an answer may begin with where it is no test.
const WORDS: [&str; 4] = ["built in: ", "written: ", "waived: ", "not held: "];

/// One row: the requirements that it answers, and the answer.
struct Row {
    numbers: String,
    answer: String,
}

#[test]
fn each_requirement_has_one_row() {
    let listed = numbers();
    assert_eq!(listed.len(), 253, "{NUMBERS} holds all of levels 1 and 2");
    let mut rows_of: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    let rows = rows();
    let mut wrong = Vec::new();
    for row in &rows {
        let covered: Vec<&str> = listed
            .iter()
            .filter(|number| covers(&row.numbers, number))
            .map(String::as_str)
            .collect();
        if covered.is_empty() {
            wrong.push(format!("{} is no requirement", row.numbers));
        }
        for number in covered {
            rows_of.entry(number).or_default().push(&row.numbers);
        }
    }
    for number in &listed {
        match rows_of.get(number.as_str()).map_or(&[][..], Vec::as_slice) {
            [_] => {}
            found => wrong.push(format!("{number} stands in {} rows: {found:?}", found.len())),
        }
    }
    assert!(wrong.is_empty(), "{TABLE}:\n{}", wrong.join("\n"));
}

#[test]
fn each_requirement_has_an_answer_that_is_there() {
    let tests = names_of_tests();
    assert!(tests.len() > 800, "only {} tests were found", tests.len());
    let mut wrong = Vec::new();
    for row in rows() {
        let named = quoted(&row.answer);
        let is_held = named.iter().any(|name| tests.contains(*name));
        let is_said =
            row.answer.split("; ").any(|part| WORDS.iter().any(|word| part.starts_with(word)));
        if !is_held && !is_said {
            wrong.push(format!("{}: neither a test nor a reason", row.numbers));
        }
        for name in named {
            let is_path = name.contains(['/', '.']);
            let is_there = if is_path { rooted(name).exists() } else { tests.contains(name) };
            if !is_there && (is_path || name.contains('_')) {
                wrong.push(format!("{}: there is no {name}", row.numbers));
            }
        }
    }
    assert!(wrong.is_empty(), "{TABLE}:\n{}", wrong.join("\n"));
}

#[test]
fn each_link_of_the_table_leads_somewhere() {
    let text = read(&rooted(TABLE));
    let mut links = 0;
    for piece in text.split("](").skip(1) {
        let target = piece.split(')').next().unwrap();
        let (file, heading) = target.split_once('#').unwrap();
        let there = match file {
            "" => text.clone(),
            file => read(&rooted("tests").join(file)),
        };
        let is_there = there.lines().any(|line| line.starts_with('#') && slug(line) == heading);
        assert!(is_there, "{TABLE}: {target} leads nowhere");
        links += 1;
    }
    // What is linked by its first words in bold.
    for piece in text.rsplit("](#written-down-here)").skip(1) {
        let words = piece.rsplit('[').next().unwrap();
        assert!(text.contains(&format!("\n**{words}")), "{TABLE}: nothing is headed {words}");
    }
    assert!(links > 10, "{links}");
}

/// The requirements of levels 1 and 2.
fn numbers() -> Vec<String> {
    let text = read(&rooted(NUMBERS));
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    assert_eq!(lines.next(), Some("number,level"));
    lines
        .map(|line| {
            let (number, level) = line.split_once(',').unwrap();
            assert!(["1", "2"].contains(&level), "{line}");
            number.to_owned()
        })
        .collect()
}

/// The rows that begin with the number of a requirement.
fn rows() -> Vec<Row> {
    let text = read(&rooted(TABLE));
    let rows = text.lines().filter(|line| line.starts_with("| V"));
    rows.map(|line| {
        let cells: Vec<&str> = line.trim_matches('|').split('|').map(str::trim).collect();
        let [numbers, _, answer] = cells[..] else { panic!("{TABLE}: not three cells: {line}") };
        Row { numbers: numbers.to_owned(), answer: answer.to_owned() }
    })
    .collect()
}

/// Whether `V1.2.3`, `V1.2.6–V1.2.8` or `V10.1–V10.7` covers this number.
fn covers(range: &str, number: &str) -> bool {
    let (first, last) = range.split_once('–').unwrap_or((range, range));
    let (first, last, number) = (parts(first), parts(last), parts(number));
    assert_eq!(first.len(), last.len(), "{range}");
    assert_eq!(first[..first.len() - 1], last[..last.len() - 1], "{range} goes over a border");
    let head = &number[..first.len().min(number.len())];
    (first.len() == 3 || range.contains('–')) && head >= &first[..] && head <= &last[..]
}

fn parts(number: &str) -> Vec<u32> {
    number.strip_prefix('V').unwrap().split('.').map(|part| part.parse().unwrap()).collect()
}

/// What stands between backticks.
fn quoted(text: &str) -> Vec<&str> {
    text.split('`').skip(1).step_by(2).collect()
}

/// Every function that a line above it makes a test.
fn names_of_tests() -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for file in ["src", "tests"].iter().flat_map(|folder| sources(folder, "rs")) {
        let text = read(&file);
        let mut is_test = false;
        for line in text.lines().map(str::trim_start) {
            if line.starts_with("#[test]") || line.starts_with("#[tokio::test") {
                is_test = true;
            } else if let Some((_, name)) = line.split_once("fn ").filter(|_| is_test) {
                let name = name.split('(').next().unwrap();
                assert!(!name.is_empty(), "{}", relative(&file, ""));
                names.insert(name.to_owned());
                is_test = false;
            }
        }
    }
    names
}

/// The anchor of a heading.
fn slug(heading: &str) -> String {
    let words = heading.trim_start_matches('#').trim().to_lowercase().replace(' ', "-");
    words.chars().filter(|letter| letter.is_alphanumeric() || *letter == '-').collect()
}
