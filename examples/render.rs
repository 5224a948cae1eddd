use holewright::pages::{answer, Context};
fn main() {
    let out = std::env::args().nth(1).unwrap();
    let context = Context { base_url: String::new() };
    for address in std::env::args().skip(2) {
        let (path, query) = address.split_once('?').unwrap_or((&address, ""));
        let a = answer(path, query, &context);
        let name = address.replace(['/', '?', '&', '='], "_");
        eprintln!("{} {} {:?} {}", a.status, address, a.location(), a.body.len());
        let css = holewright::pages::assets::style_sheet();
        let body = a.body.replace(css, "holewright.css");
        std::fs::write(format!("{out}/{name}.html"), body).unwrap();
    }
}
