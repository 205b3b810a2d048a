//! How wide a text will be, at least enough not to collide: no font is at hand when a picture is drawn, so widths are those
//! of a wide sans (DejaVu Sans, measured), and narrower fonts leave a little air.

/// Width of a character over the size of the type.
fn advance(c: char) -> f64 {
    match c {
        // Marks that stand on the letter before.
        '\u{300}'..='\u{36f}'
        | '\u{591}'..='\u{5c7}'
        | '\u{610}'..='\u{61a}'
        | '\u{64b}'..='\u{65f}'
        | '\u{200b}'..='\u{200f}' => 0.0,
        'i' | 'j' | 'l' | '\'' => 0.28,
        'I' | ' ' | '.' | ',' | ';' | ':' | '|' | '\u{b7}' => 0.34,
        'f' | 't' | 'r' | '(' | ')' | '[' | ']' | '-' | '/' | '!' => 0.41,
        'm' | 'M' | '%' | '@' | 'w' | 'W' | '\u{2014}' | '\u{2026}' => 0.98,
        'a'..='z' | '0'..='9' => 0.636,
        'A'..='Z' | '+' | '<' | '>' | '=' | '\u{b1}' | '\u{d7}' => 0.76,
        '\u{1100}'..='\u{115f}'
        | '\u{2e80}'..='\u{a4cf}'
        | '\u{ac00}'..='\u{d7a3}'
        | '\u{f900}'..='\u{faff}'
        | '\u{ff00}'..='\u{ff60}'
        | '\u{1f000}'..='\u{1faff}' => 1.05,
        _ => 0.68,
    }
}

/// Width of a text at a size, px.
pub fn width(text: &str, size: f64) -> f64 {
    size * text.chars().map(advance).sum::<f64>()
}

/// Text of strangers made fit to print: no control characters, no marks that turn the direction of what follows.
pub fn clean(text: &str) -> String {
    let kept: String = text
        .chars()
        .map(|c| if c.is_whitespace() { ' ' } else { c })
        .filter(|c| {
            !(c.is_control()
                || matches!(*c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fffe}' | '\u{ffff}'))
        })
        .collect();
    kept.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The text, shortened with a sign of omission where it does not fit.
pub fn fit(text: &str, size: f64, room: f64) -> String {
    let text = clean(text);
    if width(&text, size) <= room {
        return text;
    }
    let mut kept = String::new();
    let mut used = size * advance('\u{2026}');
    for c in text.chars() {
        used += size * advance(c);
        if used > room {
            break;
        }
        kept.push(c);
    }
    format!("{}\u{2026}", kept.trim_end())
}

/// Words; digits set apart by a space (`3 600`) stay together.
fn parts(text: &str) -> Vec<String> {
    let mut parts: Vec<String> = Vec::new();
    for word in text.split(' ') {
        let digits = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
        match parts.last_mut() {
            Some(last)
                if digits(last.chars().last())
                    && word.len() >= 3
                    && word.chars().take(3).all(|c| c.is_ascii_digit()) =>
            {
                last.push(' ');
                last.push_str(word);
            }
            _ => parts.push(word.to_owned()),
        }
    }
    parts
}

/// The text in lines no wider than `room`, at most `most` of them.
pub fn wrap(text: &str, size: f64, room: f64, most: usize) -> Vec<String> {
    let text = clean(text);
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    let parts = parts(&text);
    let mut words = parts.iter().map(String::as_str);
    while let Some(word) = words.next() {
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if width(&longer, size) <= room {
            line = longer;
        } else if lines.len() + 1 >= most {
            let rest: Vec<&str> = words.by_ref().collect();
            line = fit(&format!("{longer} {}", rest.join(" ")), size, room);
        } else if line.is_empty() {
            // A word longer than the line.
            line = fit(word, size, room);
        } else {
            lines.push(std::mem::take(&mut line));
            line = fit(word, size, room);
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines.truncate(most.max(1));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_text_is_shortened_to_the_room() {
        let long = "Kittiwake of Port Merrin ".repeat(40);
        assert!(width(&fit(&long, 12.0, 200.0), 12.0) <= 200.0);
        let lines = wrap(&long, 12.0, 200.0, 3);
        assert_eq!(lines.len(), 3);
        assert!(lines.iter().all(|l| width(l, 12.0) <= 200.0) && lines[2].ends_with('\u{2026}'));
    }

    #[test]
    fn no_word_is_lost_between_lines() {
        let text = "Too much pitch, nine chances in ten";
        assert_eq!(wrap(text, 12.0, 90.0, 9).join(" "), text);
    }

    #[test]
    fn direction_marks_are_taken_out() {
        assert_eq!(clean("a\u{202e}b\u{0}\n c"), "ab c");
    }
}
