//! S03: what a public scanner of headers would say, its rules run here without a network.
//!
//! The rules and their points are the HTTP Observatory's as published for site owners, recalled and
//! not read again: a base of 100, points off for what is missing, points on for what is stricter.

use axum::http::HeaderMap;

use super::club::{Club, PASSWORD, PLAIN};

/// One rule: its name, and the points it gives or takes.
type Rule = (&'static str, i32);

fn text<'a>(headers: &'a HeaderMap, name: &str) -> &'a str {
    headers.get(name).and_then(|value| value.to_str().ok()).unwrap_or_default()
}

fn policy(headers: &HeaderMap) -> Rule {
    let policy = text(headers, "content-security-policy");
    let all = |word: &str| policy.contains(word);
    match policy {
        "" => ("no content security policy", -25),
        _ if all("unsafe-inline") || all("unsafe-eval") || all("data:") || all("http:") => {
            ("a policy with unsafe sources", -20)
        }
        _ if policy.starts_with("default-src 'none'") => ("a policy that allows nothing else", 10),
        _ => ("a policy without unsafe sources", 5),
    }
}

fn cookie(set: &str) -> Rule {
    let has = |word: &str| set.split(';').any(|part| part.trim().eq_ignore_ascii_case(word));
    match (has("Secure"), has("HttpOnly"), set.contains("SameSite=")) {
        (true, true, true) => ("session cookies are secure, hidden from scripts and same-site", 5),
        (true, true, false) => ("session cookies are secure and hidden from scripts", 0),
        (true, false, _) => ("a session cookie that scripts can read", -30),
        (false, _, _) => ("a session cookie sent in the clear", -40),
    }
}

fn transport(headers: &HeaderMap) -> Rule {
    let value = text(headers, "strict-transport-security");
    let age = value.split(';').find_map(|part| part.trim().strip_prefix("max-age="));
    match age.and_then(|age| age.parse::<u64>().ok()) {
        Some(age) if age >= 15_768_000 => ("strict transport for six months or more", 0),
        Some(_) => ("strict transport for less than six months", -10),
        None => ("no strict transport", -20),
    }
}

fn rest(headers: &HeaderMap, page: &str) -> Vec<Rule> {
    let framing = if text(headers, "content-security-policy").contains("frame-ancestors 'none'") {
        ("no page of another site may frame it", 5)
    } else {
        ("anybody may frame it", -20)
    };
    let kinds = match text(headers, "x-content-type-options") {
        "nosniff" => ("kinds are not guessed", 0),
        _ => ("kinds may be guessed", -5),
    };
    let referrer = match text(headers, "referrer-policy") {
        "no-referrer" | "same-origin" | "strict-origin" => ("addresses stay here", 5),
        "" => ("nothing said of referrers", 0),
        _ => ("addresses are told elsewhere", -5),
    };
    let resources = match text(headers, "cross-origin-resource-policy") {
        "same-origin" | "same-site" => ("resources are for this site", 10),
        _ => ("resources for anybody", 0),
    };
    let sharing = match text(headers, "access-control-allow-origin") {
        "" => ("not shared with scripts of other sites", 0),
        _ => ("shared with scripts of other sites", -50),
    };
    let scripts = if page.contains("src=\"http") || page.contains("src=\"//") {
        ("scripts from elsewhere", -50)
    } else {
        ("no script from elsewhere", 0)
    };
    vec![framing, kinds, referrer, resources, sharing, scripts]
}

#[tokio::test]
async fn s03_the_scanners_rules_give_the_best_mark() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let mut browser = club.browser();
    let signed_in = browser.sign_in("Enid Hathersage", PASSWORD).await;
    let cookies = signed_in.headers.get_all("set-cookie").iter();
    let session = cookies.map(|value| value.to_str().unwrap()).find(|set| set.contains("__Host-"));
    let session = cookie(session.unwrap());
    for path in
        ["/", "/threads/ba/5", "/materials/gunmetal", "/plan", "/notes", "/sign-in", "/nothing"]
    {
        let page = club.browser().get(path).await;
        let mut rules = vec![policy(&page.headers), session, transport(&page.headers)];
        rules.extend(rest(&page.headers, &page.body));
        let off: i32 = rules.iter().map(|(_, points)| (*points).min(0)).sum();
        let on: i32 = rules.iter().map(|(_, points)| (*points).max(0)).sum();
        // What is stricter counts only where hardly anything is missing.
        let score = 100 + off + if 100 + off >= 90 { on } else { 0 };
        assert!(score >= 125, "{path}: {score}, by {rules:?}");
    }
}
