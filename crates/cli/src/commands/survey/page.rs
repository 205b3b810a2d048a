//! The page of `survey`.

use counsel::phrase;
use counsel::report::{Band, Gravity};
use counsel::survey::SurveyReport;
use counsel::survey::report::{AccuracySheet, BalanceSheet, BoreReport, ClassRow, RepairSheet, SectionSheet};

use crate::answer::Report;
use crate::args::{Common, Units};
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::strip::{self, Row, Shape};
use crate::{number, sections, words};

/// What is shown of a section.
type Pick = fn(&SectionSheet) -> Option<Band>;

/// Lays the answer out.
pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Survey(said) = report else { return page.finish() };
    let units = common.units;
    sections::title(&mut page, &said.title);
    let stop: Vec<String> =
        said.findings.iter().filter(|f| f.gravity == Gravity::Stop).map(|f| f.sentence.clone()).collect();
    sections::stop(&mut page, &stop);
    sections::headline(&mut page, &said.headline);
    page.raw(&strip::draw(&drawn(said, units), unit(units)));
    page.gap();
    summary(&mut page, said, units);
    sections::findings(&mut page, &said.findings);
    let over_radius: [(&str, Pick); 4] = [
        ("Pitch", |s| s.pitch),
        ("Width of the blade along its face", |s| s.chord),
        ("Greatest thickness", |s| s.thickness),
        ("Track", |s| s.track),
    ];
    for (name, pick) in over_radius {
        by_radius(&mut page, said, name, pick, units);
    }
    photo(&mut page, said, units);
    turning(&mut page, said);
    accuracy(&mut page, &said.accuracy, units);
    repair(&mut page, &said.repair, units);
    damage(&mut page, said);
    if let Some(bore) = &said.bore {
        self::bore(&mut page, bore, units);
    }
    sections::notes(&mut page, &said.notes);
    page.gap();
    page.sentences("Bands hold 8 chances in 10; behind ± stands half a band.", Ink::Quiet);
    page.sentences(sections::SAFETY, Ink::Quiet);
    page.finish()
}

fn unit(units: Units) -> &'static str {
    number::shown("mm", units).unit
}

/// A length of mm rounded to a step given in mm, without its unit.
fn length(mm: f64, step: f64, units: Units) -> String {
    match units {
        Units::Metric => number::rounded(mm, step),
        Units::Imperial => {
            let digits = if step < 0.5 { 3 } else { 2 };
            let text = format!("{:.digits$}", mm / 25.4);
            let nothing = !text.contains(|c: char| ('1'..='9').contains(&c));
            if nothing { text.replace('-', "") } else { text.replace('-', "\u{2212}") }
        }
    }
}

/// A measured length as its middle and half its band: `612 ± 3`.
fn measured(band: &Band, units: Units) -> String {
    let half = 0.5 * (band.high - band.low);
    let step = if half < 0.95 { 0.1 } else { 1.0 };
    format!("{} ± {}", length(band.middle, step, units), length(half.max(step), step, units))
}

/// The blades' mean pitches over one scale, with what the pitch was meant to be as a line through them.
fn drawn(said: &SurveyReport, units: Units) -> Vec<Row> {
    let factor = number::shown("mm", units).factor;
    let row = |label: &str, band: &Band, shape| Row {
        label: label.to_owned(),
        at: [band.low, band.middle, band.high].map(|mm| mm * factor),
        shape,
        says: format!("{} {}", measured(band, units), unit(units)),
    };
    let mut rows = Vec::new();
    if let Some(meant) = said.reference_pitch {
        let mut row = row("meant", &Band { low: meant, middle: meant, high: meant, unit: "mm" }, Shape::Hatched);
        row.says = format!("{} {}", length(meant, 1.0, units), unit(units));
        rows.push(row);
    }
    let blades = said.blades.iter().filter_map(|blade| Some((blade, blade.mean_pitch.as_ref()?)));
    rows.extend(blades.map(|(blade, band)| row(&format!("blade {}", blade.name), band, Shape::Cross)));
    rows.extend(said.mean_pitch.as_ref().map(|band| row("propeller", band, Shape::Full)));
    if rows.len() > 1 { rows } else { Vec::new() }
}

/// What the propeller is, in few lines.
fn summary(page: &mut Page, said: &SurveyReport, units: Units) {
    let lengths = |band: &Band| {
        let other = match units {
            Units::Metric => format!("{} in", length(band.middle, 1.0, Units::Imperial)),
            Units::Imperial => format!("{} mm", length(band.middle, 1.0, Units::Metric)),
        };
        format!("{} {} ({other})", measured(band, units), unit(units))
    };
    // As many digits as half the band has use for.
    let pure = |band: &Band, unit: &str| {
        let half = 0.5 * (band.high - band.low);
        let digits = if half >= 0.95 { 0 } else { (-half.max(5e-4).log10()).ceil().clamp(1.0, 3.0) as usize };
        let (middle, half) = (format!("{:.digits$}", band.middle), format!("{half:.digits$}"));
        let text = if unit == "°" { format!("{middle}° ± {half}°") } else { format!("{middle} ± {half}{unit}") };
        text.replace('-', "\u{2212}")
    };
    let mass = |band: &Band| number::band(band, units);
    let mut rows: Vec<[String; 2]> = Vec::new();
    let mut add = |name: &str, text: Option<String>| rows.extend(text.map(|text| [name.to_owned(), text]));
    let blades = match (said.blades_measured, said.blades_of) {
        (measured, of) if measured == of => of.to_string(),
        (measured, of) => format!("{of}, {measured} of them measured"),
    };
    add("blades", Some(blades));
    add("hand", said.hand.map(str::to_owned));
    add("diameter", said.diameter.as_ref().map(lengths));
    add("meant", said.pitch_reference.clone());
    add("mean pitch", said.mean_pitch.as_ref().map(lengths));
    add("pitch that thrusts, without cup", said.effective_pitch.as_ref().map(lengths));
    add("between the blades", said.blade_spread.as_ref().map(|band| number::band(band, units)));
    add("pitch over the radius", Some(said.radial.to_owned()));
    add("pitch along the chord", Some(said.chordwise.to_owned()));
    if let Some(areas) = &said.areas {
        add("expanded area ratio", Some(pure(&areas.expanded_ratio, "")));
        add("developed area ratio", Some(pure(&areas.developed_ratio, "")));
        let projected = pure(&areas.projected_ratio, "");
        add(
            "projected area ratio",
            Some(format!("{projected} (Taylor's relation {:.2})", areas.projected_ratio_taylor)),
        );
        add("mean width ratio", Some(pure(&areas.mean_width_ratio, "")));
    }
    let shape = &said.shape;
    add("rake", shape.rake.as_ref().map(|band| pure(band, "°")));
    add("skew", shape.skew.as_ref().map(|band| pure(band, "°")));
    add("thickness fraction", shape.thickness_fraction.as_ref().map(|band| pure(band, "")));
    add("mass", shape.mass.as_ref().map(mass));
    add("moment of inertia, dry", shape.inertia.as_ref().map(|band| pure(band, " kg m²")));
    let by = [("Measured", said.surveyor.as_deref()), ("on", said.date.as_deref())];
    let by: Vec<String> = by.iter().filter_map(|(word, text)| Some(format!("{word}: {}", (*text)?))).collect();
    page.heading("The propeller as measured");
    page.table("ll", &[], &rows.into_iter().map(|row| row.map(Cell::from).to_vec()).collect::<Vec<_>>());
    if !by.is_empty() {
        page.set_in(&format!("{}.", by.join("; ").replace("; on: ", " on ")), Ink::Quiet);
    }
}

/// One quantity over the radius, a column for each blade.
fn by_radius(page: &mut Page, said: &SurveyReport, name: &str, pick: Pick, units: Units) {
    let mut radii: Vec<f64> = said
        .blades
        .iter()
        .flat_map(|blade| &blade.sections)
        .filter(|section| pick(section).is_some())
        .map(|section| section.radius_ratio)
        .collect();
    radii.sort_by(f64::total_cmp);
    radii.dedup_by(|a, b| (*a - *b).abs() < 0.005);
    if radii.is_empty() {
        return;
    }
    let unit = unit(units);
    page.heading(&format!("{name}, {unit}"));
    let names: Vec<String> = said.blades.iter().map(|blade| format!("blade {}", blade.name)).collect();
    let head: Vec<&str> = std::iter::once("r/R").chain(names.iter().map(String::as_str)).collect();
    let of = |at: f64| {
        let blades = said.blades.iter().map(move |blade| {
            let here = blade.sections.iter().find(|section| (section.radius_ratio - at).abs() < 0.005);
            here.and_then(pick)
                .map_or_else(|| Cell::from("-"), |band| Cell::inked(measured(&band, units), Ink::Measured))
        });
        std::iter::once(Cell::from(format!("{at:.2}"))).chain(blades).collect::<Vec<_>>()
    };
    let mut rows: Vec<Vec<Cell>> = radii.into_iter().map(of).collect();
    if name == "Pitch" {
        let mean = said.blades.iter().map(|blade| {
            let off = blade.from_mean.map_or(String::new(), |off| {
                let sign = if off >= 0.05 { "+" } else { "" };
                format!(" ({sign}{} %)", number::rounded(off, 0.1))
            });
            blade
                .mean_pitch
                .as_ref()
                .map_or_else(|| Cell::from("-"), |band| format!("{}{off}", measured(band, units)).into())
        });
        rows.push(std::iter::once(Cell::from("mean")).chain(mean).collect());
    }
    page.table(&"r".repeat(head.len()), &head, &rows);
}

/// One blade on a photograph.
fn photo(page: &mut Page, said: &SurveyReport, units: Units) {
    let Some(photo) = &said.photo else { return };
    page.heading("One blade by the photograph");
    let ratio = |band: &Band| phrase::span(band);
    let mut rows = vec![
        ["shaft centre to tip".to_owned(), format!("{} {}", measured(&photo.tip_radius, units), unit(units))],
        ["projected area of the blade".to_owned(), phrase::span(&photo.projected)],
        ["projected area ratio, blades alike".to_owned(), ratio(&photo.projected_ratio)],
    ];
    rows.extend(photo.expanded_ratio.as_ref().map(|band| ["expanded area ratio (Taylor)".to_owned(), ratio(band)]));
    rows.push(["skew".to_owned(), format!("{}°", phrase::span(&Band { unit: "1", ..photo.skew }))]);
    rows.extend(photo.hand.map(|hand| ["hand".to_owned(), hand.to_owned()]));
    page.table("ll", &[], &rows.into_iter().map(|row| row.map(Cell::from).to_vec()).collect::<Vec<_>>());
}

/// What turns with the shaft.
fn turning(page: &mut Page, said: &SurveyReport) {
    page.heading("What turns with the shaft");
    page.set_in(&said.turning.statement, Ink::Plain);
}

/// Values listed one by one.
const LISTED: usize = 10;

fn accuracy(page: &mut Page, sheet: &AccuracySheet, units: Units) {
    page.heading("Accuracy class (ISO 484)");
    let mut rows: Vec<Vec<Cell>> = vec![
        vec!["class".into(), Cell::inked(sheet.words.clone(), Ink::Speak)],
        vec!["within the spread of measuring".into(), sheet.within_spread.clone().into()],
    ];
    if !sheet.decided_by.is_empty() {
        rows.push(vec!["decided by".into(), sheet.decided_by.join("; ").into()]);
    }
    rows.push(vec!["blades among themselves".into(), sheet.among_blades.clone().into()]);
    if !sheet.missing_radii.is_empty() {
        rows.push(vec!["not measured".into(), sheet.missing_radii.join(" ").into()]);
    }
    page.table("ll", &[], &rows);
    page.set_in(&sheet.statement, Ink::Plain);
    classes(page, &sheet.rows, units);
    for source in &sheet.sources {
        page.set_in(&format!("Source: {source}"), Ink::Quiet);
    }
}

/// The values farthest out, each with its class.
fn classes(page: &mut Page, rows: &[ClassRow], units: Units) {
    let mut worst: Vec<&ClassRow> = rows.iter().collect();
    // Outside class III is worse than every class.
    worst.sort_by(|a, b| {
        let grade = |row: &ClassRow| (row.class.is_none(), row.class);
        grade(b).cmp(&grade(a)).then(b.percent.abs().total_cmp(&a.percent.abs()))
    });
    let rest = worst.split_off(worst.len().min(LISTED));
    if worst.is_empty() {
        return;
    }
    page.gap();
    let value = |row: &ClassRow, value: f64| match row.unit {
        "mm" => length(value, if row.measured.abs() < 100.0 { 0.1 } else { 1.0 }, units),
        _ => number::rounded(value, 0.1),
    };
    let cells = |row: &&ClassRow| -> Vec<Cell> {
        let unit = if row.unit == "mm" { unit(units) } else { "°" };
        vec![
            row.what.clone().into(),
            row.blade.clone().unwrap_or_default().into(),
            row.radius_ratio.map(|at| format!("{at:.2}")).unwrap_or_default().into(),
            Cell::inked(value(row, row.measured), Ink::Measured),
            value(row, row.meant).into(),
            format!("{} ± {} {unit}", value(row, row.deviation), value(row, row.spread)).into(),
            row.words.clone().into(),
            if row.within_spread == row.words { "".into() } else { row.within_spread.clone().into() },
        ]
    };
    let head = ["farthest out first", "blade", "r/R", "measured", "meant", "off by", "class", "or, within the spread"];
    page.table("lllrrrll", &head, &worst.iter().map(cells).collect::<Vec<_>>());
    if let Some(next) = rest.first() {
        let more = words::count(rest.len(), "value", "values");
        let class = if next.class.is_some() { format!("in class {}", next.words) } else { next.words.clone() };
        page.set_in(&format!("{more} more, {class} or better."), Ink::Quiet);
    }
}

fn repair(page: &mut Page, sheet: &RepairSheet, units: Units) {
    page.heading("Repair sheet");
    page.set_in(&format!("Target: {}.", sheet.target.trim_end_matches('.')), Ink::Plain);
    if !sheet.true_up_first.is_empty() {
        let first = words::list(&sheet.true_up_first, "and");
        page.set_in(&format!("True up first: {first}."), Ink::Speak);
    }
    if !sheet.rows.is_empty() {
        page.gap();
        let unit = unit(units);
        let signed = |value: f64, text: String| {
            if value > 0.0 && text.contains(|c: char| ('1'..='9').contains(&c)) { format!("+{text}") } else { text }
        };
        let rows: Vec<Vec<Cell>> = sheet
            .rows
            .iter()
            .map(|row| {
                vec![
                    row.blade.clone().into(),
                    format!("{:.2}", row.radius_ratio).into(),
                    length(row.radius, 1.0, units).into(),
                    Cell::inked(
                        format!("{} ± {}", length(row.before, 1.0, units), length(row.spread, 0.1, units)),
                        Ink::Measured,
                    ),
                    length(row.target, 1.0, units).into(),
                    signed(row.correction, length(row.correction, 1.0, units)).into(),
                    format!("{}°", signed(row.twist, number::rounded(row.twist, 0.1))).into(),
                    row.action.into(),
                    row.after.map_or_else(|| "______".to_owned(), |after| length(after, 1.0, units)).into(),
                ]
            })
            .collect();
        let (radius, before, target) = (format!("radius {unit}"), format!("before {unit}"), format!("target {unit}"));
        let head = ["blade", "r/R", &radius, &before, &target, "correct by", "twist", "do", "after"];
        page.table("lrrrrrrlr", &head, &rows);
        page.gap();
    }
    for (at, step) in (1..).zip(&sheet.steps) {
        page.hanging(&words::sentence(step), Ink::Plain, &format!("{at:>3}. "), "     ");
    }
    if !sheet.no_weld.is_empty() {
        page.hanging(&sheet.no_weld, Ink::Speak, "  ", "  ");
    }
    if let Some(balance) = &sheet.balance {
        self::balance(page, balance, units);
    }
    for caution in &sheet.cautions {
        page.set_in(&format!("Caution: {caution}"), Ink::Speak);
    }
}

fn balance(page: &mut Page, sheet: &BalanceSheet, units: Units) {
    page.gap();
    let mass = number::plain(sheet.mass, "kg", units);
    let turns = number::with_unit(number::rounded(sheet.shaft_speed, 1.0), "rpm");
    page.set_in(&format!("Balance, for {mass} ({}) at {turns} of the shaft:", sheet.mass_from), Ink::Plain);
    let rows: Vec<Vec<Cell>> = sheet
        .rows
        .iter()
        .map(|row| {
            vec![
                row.class.to_string().into(),
                format!("{} g at the tip", phrase::plain(row.allowed, 2)).into(),
                format!("by the {}", row.rule).into(),
                format!("grade {}", phrase::plain(row.grade, 2)).into(),
            ]
        })
        .collect();
    page.table("lrll", &[], &rows);
    page.set_in(&sheet.statement, Ink::Quiet);
}

fn damage(page: &mut Page, said: &SurveyReport) {
    if said.damage.is_empty() {
        return;
    }
    page.heading("Damage");
    for place in &said.damage {
        let root = if place.root_zone { ", in the root zone" } else { "" };
        page.hanging(
            &format!("{}: {}{root}.", words::sentence(&place.place), place.what),
            Ink::Measured,
            "  - ",
            "    ",
        );
        let likely = if place.likely.is_empty() {
            String::new()
        } else {
            format!("Likely {}. ", place.likely.trim_end_matches('.'))
        };
        page.hanging(&format!("{likely}{}", words::sentence(&place.remedy)), Ink::Plain, "    ", "    ");
    }
}

fn bore(page: &mut Page, bore: &BoreReport, units: Units) {
    page.heading("Hub and bore");
    page.set_in(&bore.statement, Ink::Plain);
    if let Some(warning) = &bore.warning {
        page.set_in(&format!("Caution: {warning}"), Ink::Speak);
    }
    let found = [("nearest", &bore.nearest), ("also near", &bore.also_near)];
    let rows: Vec<Vec<Cell>> = found
        .iter()
        .filter_map(|(word, size)| {
            let size = size.as_ref()?;
            let key = size.key.map_or(String::new(), |key| format!("key {} {}", length(key, 0.1, units), unit(units)));
            Some(vec![
                (*word).into(),
                format!("{} {}, {}", size.standard, size.shaft, size.taper).into(),
                format!("off by {} {}", length(size.off, 0.1, units), unit(units)).into(),
                key.into(),
                size.trust.into(),
            ])
        })
        .collect();
    page.table("lllll", &[], &rows);
    for note in &bore.notes {
        page.item(&words::sentence(note));
    }
}
