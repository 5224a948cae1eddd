"""What `.ci/crawl` asks for: every address that can be reached, what people type, and what members do."""
import html, json, random, re
from urllib.parse import urlencode

# What the forms take: what is right, then what is not. Where a name means two things it stands with
# its form; a star stands for the diameter of the thread. The tables of the site fill the rest.
SIZES = ["8mm", "1/4in", '.25"', "6", "12.5 mm", "3/8", "*1", "*1.5", "*2"], ["long", "-3", "0", "1e9", "400mm"]
ANGLES = ["118", "135", "90", "82 deg"], ["10", "200", "blunt"]
FIELDS = {
    "hole": (["through", "blind"], ["round"]), "calculators/tapping hole": (["*0.85", "*0.9", "No. 36", "3.3"], ["30mm", "wide"]),
    "upper_hole": (["tapping", "clearance"], ["none"]), "fit": (["close", "medium", "free"], ["loose"]),
    "aim": (["strong", "usual", "easy"], ["best"]), "tap": (["hand", "machine", "forming"], ["foot"]),
    "tap_steel": (["hss", "carbon"], ["tin"]), "tool_steel": (["hss", "carbon"], ["carbide", "cobalt"]),
    "finish": (["taper", "second", "plug"], ["last"]), "hand": (["right", "left"], ["both"]),
    "series": (["number", "metric", "number,metric", "letter,fraction,metric", "number,letter,fraction,metric"], ["yards"]),
    "owned": (["1-60, A-Z", "1-80, 1/16-1/2x64ths", "1-13x0.1mm, 2.05mm", "1-60, 1-13x0.5mm", "2.5mm"], ["spoons", "0", "5-1"]),
    "spindle_speeds": (["350, 500, 900, 1500", "200,400,2000", "620"], ["slow", "0"]),
    "spindle_max": (["700", "2000", "10000"], ["0", "fast"]), "flutes": (["1", "4", "6", "8"], ["0", "99", "some"]),
    "work": (["drilling", "reaming", "tapping", "countersinking", "spotting"], ["sawing"]),
    "form": (["metric", "unified", "whitworth", "ba", "pipe", "cycle", "miniature"], ["square"]),
    "pitch": (["0.6", "40 tpi", "0.5 mm", "26tpi"], ["9mm", "steep"]), "engagement": (["65", "75%", "50"], ["200", "most"]),
    **dict.fromkeys(["depth", "over_thickness", "part_thickness", "diameter", "major", "head", "hole_size"], SIZES),
    "measured_hole": (["*0.8", "*0.85", "*0.9", "2.7mm"], ["*1.1", "wide"]),
    **dict.fromkeys(["centre_error", "upper_error", "lower_error"], (["0.2mm", "0.1", "0.05", ".005in"], ["much", "-1", "0"])),
    **dict.fromkeys(["point_angle", "countersink_angle"], ANGLES),
}
# Each form: how many requests, the fields that are nearly always filled, those that may be.
FORMS = {
    "plan": (1400, "thread material", "hole depth over over_thickness upper_hole fit aim series owned tap tap_steel finish"
             " hand part_thickness measured_hole centre_error point_angle spindle_speeds spindle_max screw"),
    "calculators/speeds": (300, "material work diameter", "depth tool_steel point_angle flutes head hole_size"
                           " countersink_angle series owned spindle_speeds spindle_max"),
    "calculators/tapping": (300, "thread", "form major pitch hole engagement series owned"),
    "calculators/clearance": (300, "thread", "diameter fit upper_error lower_error series owned"),
}
SEARCHES = ["{t}", "{t} tap", "tapping drill {t}", "{t} in {m}", "{t} {m}", "clearance {t}", "lh {t}", "{d}", "drill {d}", "#{n}",
            "no {n}", "{m}", "{m} speed", "{f}mm", ".{n}", "{n}/64", "{t} x {f}", "drill {m} {f}mm", "ream {f}", "tap {m}"]
ODD = ["", " ", "é", "<b>&", "a" * 300, "0", "%", "speeds", "drawer", "boiler", "steam fitting", "which lubricant"]
DRAWERS = ["drills=1-60%2C+1-6x0.1mm&taps=BA+0-10&speeds=350%2C+500&on=yes", "taps=M2-M6&reamers=6mm&on=yes",
           "drills=1-13x0.5mm&speeds=200%2C+2000&on=no", "drills=spoons&on=yes", "drills=A-Z%2C+2.05mm&on=yes"]
KEPT = ["act=keep&drill_set=1-60&drills=2.05mm&speeds=350", "act=keep&drills=spoons&taps=4+left", "act=on", "act=off",
        "act=empty", "act=", "act=keep&tap_set=BA+0-10&reamers=6mm%2C+1%2F4in", "act=keep&drill_set=all"]
# Refused, moved, coded or not sent at all: method, address, headers.
EDGES = [("POST", "/", {}), ("PUT", "/threads/ba/5", {}), ("POST", "/api/v1/plan", {}), ("DELETE", "/notes", {}),
         ("OPTIONS", "/api/v1/plan", {"Origin": "http://elsewhere.test", "Access-Control-Request-Method": "GET"}),
         ("POST", "/sign-in", {"Sec-Fetch-Site": "cross-site"}), ("POST", "/drawer", {"Origin": "http://elsewhere.test"}),
         *[("GET", path, {"Accept": kind}) for kind in ("image/png", "text/html", "application/json", "*/*;q=0") for path in
           ("/", "/plan.json", "/api/v1/threads/ba/5", "/threads/ba/5", "/threads/ba/5.svg", "/notes.csv", "/reference.sqlite")],
         *[("GET", path, {"Accept-Encoding": coding}) for coding in ("br", "gzip", "zstd", "identity;q=0") for path in
           ("/", "/threads/ba/5", "/drills", "/api/v1/openapi.json", "/notes", "/plan?thread=5ba&material=gunmetal")],
         *[(method, path, headers) for method, headers in (("HEAD", {}), ("GET", {"If-None-Match": "*"})) for path in
           ("/", "/threads/ba/5", "/drills.csv", "/api/v1/drills", "/reference.sqlite", "/notes.json", "/no-such-page")]]
OTHERS = """/healthz /readyz /api /api/v1 /api/v1/ /api/v1/openapi.json /api/v1/none /api/v2 /notes.csv /notes.json
/notes.atom /notes.xml /reference.sqlite /reference.json /privacy /drawer /drawer.json /sign-in /sign-in?next=/me /sign-in/code
/prove /join/nobody /reset/nobody /me /me/password /me/second-factor /me/leave /me/data.json /people /people/1 /people/invite
/people/acts /queue /notes/new /notes/mine /notes/0 /notes/none /notes/1/edit /static/none.css /favicon.ico /robots.txt /none
/Threads /THREADS/BA/5 /threads/ /threads//ba /threads/ba/5/ /threads/ba/%35 /threads/ba/99 /threads/none/5 /threads/ba/5/6
/threads/metric/m3x0.5 /threads/metric/M3 /threads/metric/m3x0.5.json /threads/ba/5.pdf /drills/metric/3.0 /drills/metric/3.0.json
/drills/letter/F /drills/number/999 /drills?from=2mm&to=3mm /drills?series=letter&from=&to= /drills?from=wide
/drills.csv?from=1&to=2
/api/v1/drills?from_mm=2&to_mm=3&series=metric /api/v1/drills?from_mm=x /materials/aluminium
/materials/aluminium.json
/materials/Gunmetal /materials/cheese /Plan/?thread=5ba /plan?thread=&material= /plan?thread=5ba&thread=6ba /calculators/none
/notes?q=brass&confirmed=yes /notes?corrected=yes /notes?on=materials/gunmetal /notes?before=30 /notes?on=none
/notes?before=x""".split()
READ_BY_MEMBERS = re.compile(r"/(me|people|queue|notes|sign-in|prove)\b|/(threads/ba/5|materials/gunmetal|)$")
READ_BY_MEMBERS_FIRST = ["/me", "/people", "/queue", "/notes", "/notes/new", "/notes/mine", "/prove", "/", "/threads/ba/5",
                         "/materials/gunmetal", "/me/data.json", "/people/acts", "/people/5", "/notes/5/edit", "/me/leave"]
MEMBERS = ["Enid Hathersage", "Walter Brinscombe", "Cyril Oakenshaw", "Harold Tanbeck"]


def ask(kind, target, method="GET", who="", form=None, headers={}):
    """One request, as it is kept: who is the member who sends it."""
    return {"kind": kind, "method": method, "target": target, "who": who, "form": form, "headers": headers}


def walk(site, starts, who="", within=re.compile("/")):
    """Every address that can be reached from these, breadth-first, with its answer."""
    seen, level, walked = set(starts), list(starts), []
    while level:
        asked = [ask("member" if who else "link" if "?" in one else "page", one, who=who) for one in level]
        answers, found = site.send_all(asked), []
        for one, (status, headers, body) in zip(level, answers):
            # Where an address with a query leads is not followed: a plan leads to ever more plans.
            if "?" not in one and dict(headers).get("content-type", "").startswith("text/html"):
                found += [html.unescape(link) for link in re.findall(r'(?:href|src)="(/[^"#]*)', body.decode())]
                found += [one + end for end in (".json", ".csv", ".svg") if status == 200 and not who]
            found += [link for name, link in headers if name == "location" and link.startswith("/")]
        walked += zip(asked, answers)
        level = [one for one in dict.fromkeys(found) if one not in seen and within.match(one)]
        seen.update(level)
    return walked


def as_typed(chance, text):
    """A name in one of the ways in which people type it."""
    return chance.choice([text, text.lower(), text.upper(), text.replace(" ", ""), text.replace(" × ", "x"), f" {text} "])


def misspelt(chance, text):
    """With a letter left out, doubled, or changed for the next."""
    at = chance.randrange(len(text))
    return text[:at] + chance.choice(["", text[at] * 2, text[at:at + 2][::-1]]) + text[at + 1:]


def composed(tables, chance):
    """Requests composed from the site's own tables: the same ones for the same tables."""
    def thread():
        # Three in four are of the sizes that are met on the bench.
        common = [one for one in tables["thread"] if 1.5 < one[1] < 13]
        return chance.choice(tables["thread"] if chance.random() < 0.25 else common)

    def typed(form, field, designation, major):
        if field == "thread":
            return as_typed(chance, designation if chance.random() < 0.95 else misspelt(chance, designation))
        if field in tables:
            return as_typed(chance, chance.choice(tables[field])) if chance.random() < 0.1 else chance.choice(tables[field])
        good, bad = FIELDS.get(f"{form} {field}") or FIELDS[field]
        value = chance.choice(good if chance.random() < 0.97 else [*bad, "", "½"])
        return f"{float(value[1:]) * major:.2f} mm" if value.startswith("*") else value

    for number in range(700):
        words = chance.choice(SEARCHES).format(
            t=as_typed(chance, thread()[0]), m=chance.choice(tables["name"]), d=chance.choice(tables["drill"]),
            n=chance.randint(1, 99), f=round(chance.uniform(0.3, 25), 2))
        words = ODD[number] if number < len(ODD) else misspelt(chance, words) if number % 3 == 0 else words
        doors = ["/search", *["/api/v1/search", "/search.json", "/notes"][number % 4:][:1]]
        yield from (ask("search", f"{door}?{urlencode({'q': words})}") for door in doors)
    for form, (count, must, may) in FORMS.items():
        for number in range(count):
            size = thread()
            fields = [field for field in must.split() if chance.random() < 0.98]
            fields += [field for field in may.split() if chance.random() < 0.2]
            query = urlencode({field: typed(form, field, *size) for field in fields})
            api = f"/api/v1/{form.replace('calculators', 'calc')}"
            files = [api, f"/{form}.json", *((f"/{form}.csv", f"/{form}.svg") if form == "plan" else ())]
            yield from (ask(form.split("/")[-1], f"{door}?{query}") for door in (f"/{form}", files[number % len(files)]))
            if number % 20 == 0:
                yield ask("drawer", f"/{form}?{query}", headers={"Cookie": f"drawer={chance.choice(DRAWERS)}"})


def described(interface, chance):
    """Requests of the calculators that have no line in FORMS: from the description's examples, and wrong ones."""
    for path, item in interface["paths"].items():
        name = path.removeprefix("/api/v1/calc/")
        if name == path or f"calculators/{name}" in FORMS:
            continue
        examples = {field["name"]: field["example"] for field in item["get"]["parameters"]}
        page = f"/calculators/{name}"
        for number in range(60):
            odd = ["", "0", "-1", "wide", "1e9", f"{chance.uniform(0.1, 30):.2f}", str(chance.randint(1, 150))]
            query = urlencode({field: chance.choice([example] * 12 + odd) for field, example in examples.items()})
            for door in (page, [path, f"{page}.json", f"{page}.csv", f"{page}.svg"][number % 4]):
                yield ask(name, f"{door}?{query}")


def club(site):
    """What members read and do, in the order in which they do it."""
    walked = []

    def done(who, target, form=None):
        asked = ask("member", target, "GET" if form is None else "POST", who, form)
        walked.append((asked, site.send(asked)))
        return walked[-1][1]

    def form_of(note, fields):
        """A form about the wording that the queue or the page of a note shows last."""
        form = re.compile(rf'"/(queue/{note}|notes/{note}/correct)"[^>]*>\s*<input type="hidden" name="version" value="(\d+)"')
        pages = (body.decode() for asked, (_, _, body) in reversed(walked) if asked["target"] in ("/queue", f"/notes/{note}"))
        return f"{fields}&version={next(filter(None, map(form.search, pages)))[2]}"

    secretary, moderator, inspector, member = MEMBERS
    for who, password in [(member, "wrong+but+long+enough"), (member, ""), *((who, "@password") for who in MEMBERS)]:
        done(who, "/sign-in", urlencode({"name": who, "next": "/me"}) + f"&password={password}")
    for who in MEMBERS:
        walked += walk(site, READ_BY_MEMBERS_FIRST, who, READ_BY_MEMBERS)
    note = "form_key=crawl-0123456789abcdef&title=Gunmetal+bush&material=gunmetal&thread=5+BA&on=materials/gunmetal&text=Tapped+"
    for fields in ("do=send&title=&text=", f"do=preview&{note}", f"do=keep&{note}dry", f"do=send&on=none&{note}dry"):
        done(member, "/notes/new", fields)
    note = note.replace("crawl", "crawled")
    _, headers, _ = done(member, "/notes/new", f"do=send&{note}with+*care*.")
    number = re.search(r"note-(\d+)", dict(headers)["location"])[1]
    page, queue = f"/notes/{number}", f"/queue/{number}"

    def read(*all_of_them):
        for who in all_of_them:
            for target in (page, f"{page}/history", "/notes/mine", "/queue", "/notes", "/materials/gunmetal", "/search?q=bush"):
                done(who, target)

    read(*MEMBERS)
    done(member, queue, "do=pass")
    for fields in ("do=change&reason=", "do=pass&version=0", "do=dance"):
        done(moderator, queue, fields)
    done(moderator, queue, form_of(number, "do=change&reason=How+deep"))
    done(member, f"{page}/edit")
    done(member, f"{page}/edit", f"do=send&{note}dry,+8+mm+deep")
    done(moderator, "/queue")
    done(moderator, queue, form_of(number, "do=pass"))
    read(*MEMBERS)
    for fields in ("found=", "found=worked&material=gunmetal&size=5+BA"):
        done(inspector, f"{page}/verdict", fields)
    done(member, f"{page}/verdict", "found=worked")
    done(moderator, f"{page}/correct", form_of(number, "correction="))
    done(moderator, f"{page}/correct", form_of(number, "correction=Seven+millimetres."))
    read(member, moderator)
    for fields in ("danger=", "danger=It+flies+about."):
        done(inspector, f"{page}/report", fields)
    read(*MEMBERS)
    done(moderator, queue, form_of(number, "do=settle"))
    for fields in ("why=", "why=I+was+mistaken."):
        done(member, f"{page}/withdraw", fields)
    read(*MEMBERS)
    for fields in ("do=rights&moderator=yes", "do=stop", "do=allow", "do=dance"):
        done(secretary, "/people/8", fields)
    for target, fields in (("/people/invite", "meant_for=Fenella+Oxgarth&moderator=yes"), ("/people/8", "do=reset")):
        newcomer = "Fenella Oxgarth" if "invite" in target else "Ivy Castlewick"
        done(secretary, target, fields)
        done(secretary, "/people")
        done(newcomer, "/@slip")
        for words in ("", "short", "a+heron+on+the+brass+lathe"):
            done(newcomer, "/@slip", f"{urlencode({'name': newcomer})}&password={words}&new_password={words}")
        for target in ("/@slip", "/me", "/queue", "/notes/new"):
            done(newcomer, target)
    for target in ("/people", "/people/8", "/people/acts", "/notes.csv", "/notes.json", "/notes.atom"):
        done(secretary, target)
    for who in MEMBERS:
        done(who, "/sign-out", "")
        done(who, "/me")
    return walked


def collected(site):
    """Every request of a first run, with its answer."""
    def table(path):
        return json.loads(site.send(ask("", path))[2])

    systems = [system["id"] for system in table("/api/v1/threads")["systems"]]
    threads = [(thread["designation"], thread["major_mm"]) for system in systems for thread in
               table(f"/api/v1/threads/{system}")["threads"]]
    materials = table("/api/v1/materials")["materials"]
    slugs = [material["slug"] for material in materials]
    tables = {"thread": threads, "name": [material["name"] for material in materials], "material": slugs, "over": slugs,
              "screw": slugs, "drill": [drill["label"] for drill in table("/api/v1/drills")["drills"]]}
    walked = walk(site, ["/", *OTHERS])
    pages = [asked["target"] for asked, _ in walked if re.match("/(threads|drills|materials)[^.?]*$", asked["target"])]
    asked = [ask("api", f"/api/v1{page}") for page in pages]
    # Other spellings of an address are sent to it.
    asked += [ask("moved", page) for one in pages[::10]
              for page in (one.upper(), f"{one}/", f"{one}.JSON", one.replace("-", "%2D"))]
    asked += [ask("edge", target, method, headers=headers) for method, target, headers in EDGES]
    asked += [ask("drawer", page, headers={"Cookie": f"drawer={drawer}"}) for drawer in DRAWERS
              for page in ["/", "/drawer", "/drawer.json", "/plan", "/drills", "/drills.csv", "/calculators", *pages[::250]]]
    asked += [ask("drawer", "/drawer", "POST", "", form, {"Cookie": f"drawer={drawer}"} if drawer else {})
              for form in KEPT for drawer in ["", *DRAWERS[:3]]]
    asked += [ask("edge", target, "POST", form="title=Bush&text=Dry&do=send") for target in ("/notes/new", "/queue/1", "/people/1")]
    asked += composed(tables, random.Random(20261124))
    asked += described(table("/api/v1/openapi.json"), random.Random(20261124))
    # What was composed twice is asked for once.
    asked = list({json.dumps(one): one for one in asked}.values())
    return walked + list(zip(asked, site.send_all(asked))) + club(site)


