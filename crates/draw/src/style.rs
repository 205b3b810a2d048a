//! The one visual language: colours, strokes, type, density of spread.

/// Light or dark sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Ink on paper.
    Light,
    /// The same roles on a dark ground.
    Dark,
}

/// A role, its light and its dark colour.
const ROLES: [(&str, &str, &str); 5] = [
    ("ink", "#1b2a33", "#e4eaec"),
    ("second", "#5b6b73", "#93a3ab"),
    ("paper", "#fbfaf6", "#10191e"),
    ("water", "#dce9ec", "#1e333c"),
    ("lead", "#c2410c", "#f0803c"),
];

/// Size of running text, px.
pub const TEXT: f64 = 12.0;
/// Size of the sentence, px.
pub const SENTENCE: f64 = 15.0;
/// Distance of lines of running text, px.
pub const LEADING: f64 = 15.0;
/// Margin of the sheet, px.
pub const MARGIN: f64 = 14.0;
/// Distance of hatch lines, px.
pub const HATCH: f64 = 7.0;
/// Share of the way from the middle to the edge of the 80 % band at which half of a normal spread ends: 0.6745/1.2816.
pub const HALF: f64 = 0.526;

/// The style sheet. Classes: strokes `h` hairline, `l` line, `m` middle, `f` full, with `g` broken, `c` chain line; fills
/// `a` 80 %, `b` 50 % of spread, `w` water, `p` paper, `k` ink; `r` red-lead stroke, `q` red-lead fill; text `s` second
/// ink, `e` emphasis, `o` set off from what lies under it, `t` the sentence, `i` slanted.
const SHEET: &str = ".fw{font:12px system-ui,-apple-system,'Segoe UI',Roboto,'Helvetica Neue',Arial,'DejaVu Sans',sans-serif;\
font-variant-numeric:tabular-nums}.fw text{fill:@ink;unicode-bidi:isolate}.fw path{fill:none;stroke-linejoin:round}\
.fw .h{stroke:@second;stroke-width:.6}.fw .l{stroke:@ink;stroke-width:1}.fw .m{stroke:@ink;stroke-width:1.5}\
.fw .f{stroke:@ink;stroke-width:2.4}.fw .g{stroke-dasharray:5 3}.fw .c{stroke-dasharray:10 3 2 3}\
.fw .a{fill:@ink;fill-opacity:.14}.fw .b{fill:@ink;fill-opacity:.28}.fw .w{fill:@water}.fw .p{fill:@paper}.fw .k{fill:@ink}\
.fw .r{stroke:@lead;stroke-width:1.8}.fw .q{fill:@lead}.fw text.q{fill:@lead}.fw text.s{fill:@second}.fw .e{font-weight:600}\
.fw .o{paint-order:stroke;stroke:@paper;stroke-width:3.5px;stroke-linejoin:round}.fw .t{font-size:15px;font-weight:600}\
.fw .i{font-style:italic}";

/// The style sheet of every picture, with CSS variables and fallbacks: for a page that shows pictures without their own.
#[must_use]
pub fn sheet() -> String {
    ROLES.iter().fold(SHEET.to_owned(), |css, (role, light, _)| {
        css.replace(&format!("@{role}"), &format!("var(--fw-{role},{light})"))
    })
}

/// An SVG of ours with its variables replaced by a theme's colours, for readers that know no variables.
pub fn resolve(svg: &str, theme: Theme) -> String {
    ROLES.iter().fold(svg.to_owned(), |text, (role, light, dark)| {
        let colour = if theme == Theme::Light { light } else { dark };
        text.replace(&format!("var(--fw-{role},{light})"), colour)
    })
}
