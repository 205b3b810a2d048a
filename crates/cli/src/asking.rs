//! Asking the call's questions of whoever answers: a person at a terminal, or lines from a file.

use std::collections::BTreeMap;
use std::io::{BufRead, Write};

use toml_edit::{Array, Value};

use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::wrap;
use crate::questions::{self, Form, PLACES, Place, Question};
use crate::{value, words};

/// Answers by place (its index in [`PLACES`]) and key.
pub type Said = BTreeMap<(usize, &'static str), Value>;

/// Asks all questions in order; those that hang on an answer that was not given are passed over.
pub fn all(answers: &mut impl BufRead, prompt: &mut impl Write) -> Result<Said, Failure> {
    let mut said = Said::new();
    let mut heard = false;
    say(
        prompt,
        "An empty line, or `unknown`, is a fine answer. Add how a value is known in parentheses: 6.5 t (weighed).",
    )?;
    'parts: for (part, questions) in questions::QUESTIONS {
        say(prompt, &format!("\n{}", Ink::Speak.on(part)))?;
        for question in *questions {
            let place = place(question.place);
            if question.after.is_some_and(|key| !said.contains_key(&(place, key))) {
                continue;
            }
            let answer = ask(question, answers, prompt)?;
            heard |= !matches!(answer, Heard::End);
            match answer {
                Heard::Answer(value) => drop(said.insert((place, question.key), value)),
                Heard::Unknown => {}
                Heard::End => break 'parts,
            }
        }
    }
    say(prompt, "")?;
    if heard { Ok(said) } else { Err(Failure::EndOfAnswers) }
}

enum Heard {
    Answer(Value),
    Unknown,
    End,
}

/// Asks until the answer can be read, is unknown, or nobody answers any more.
fn ask(question: &Question, answers: &mut impl BufRead, prompt: &mut impl Write) -> Result<Heard, Failure> {
    let hint = match question.form {
        Form::OneOf(_) => String::new(),
        _ if question.example.is_empty() => String::new(),
        _ => format!(" (e.g. {})", question.example),
    };
    for line in wrap(&format!("{}{hint}", question.ask), crate::page::COLUMNS) {
        say(prompt, &line)?;
    }
    if let Form::OneOf(options) = question.form {
        for (word, means) in options {
            say(prompt, &format!("    {word:<20} {}", Ink::Quiet.on(means)))?;
        }
    }
    if let Form::AnyOf(options) = question.form {
        let all: Vec<&str> = options.iter().map(|(word, _)| *word).collect();
        for line in wrap(&all.join(", "), crate::page::COLUMNS - 4) {
            say(prompt, &format!("    {}", Ink::Quiet.on(&line)))?;
        }
    }
    loop {
        write!(prompt, "> ").and_then(|()| prompt.flush()).map_err(Failure::Stream)?;
        let mut line = Vec::new();
        let read = answers.read_until(b'\n', &mut line).map_err(Failure::Stream)?;
        if read == 0 {
            return Ok(Heard::End);
        }
        let line = String::from_utf8_lossy(&line);
        let line = line.trim();
        if is_unknown(line) {
            return Ok(Heard::Unknown);
        }
        let value = written(question, line);
        match check(question, &value) {
            Ok(()) => return Ok(Heard::Answer(value)),
            Err(why) => say(prompt, &format!("  {}", why.replace('\n', "\n  ")))?,
        }
    }
}

fn say(prompt: &mut impl Write, line: &str) -> Result<(), Failure> {
    writeln!(prompt, "{line}").map_err(Failure::Stream)
}

fn is_unknown(answer: &str) -> bool {
    let answer = answer.to_lowercase();
    matches!(answer.as_str(), "" | "?" | "-" | "unknown" | "not known" | "don't know" | "dont know" | "no idea")
}

/// The answer as a value of a job file.
fn written(question: &Question, answer: &str) -> Value {
    let parts = || answer.split([',', ';']).map(str::trim).filter(|part| !part.is_empty());
    match question.form {
        Form::Words | Form::Quantity => answer.into(),
        Form::List => Value::Array(parts().collect::<Array>()),
        Form::Quantities if parts().count() > 1 => Value::Array(parts().collect::<Array>()),
        Form::Quantities => answer.into(),
        Form::Count => answer.parse::<i64>().map_or_else(|_| answer.into(), Value::from),
        Form::OneOf(options) => completed(options, answer).into(),
        Form::AnyOf(options) => Value::Array(parts().map(|part| completed(options, part)).collect::<Array>()),
    }
}

/// The word that is meant: the beginning of one and of no other is enough. What fits none stays as it was said.
fn completed<'a>(options: &[(&'static str, &str)], answer: &'a str) -> &'a str {
    let lower = answer.to_lowercase();
    let mut fitting = options.iter().map(|(word, _)| *word).filter(|word| word.starts_with(lower.as_str()));
    let exact = options.iter().map(|(word, _)| *word).find(|word| *word == lower);
    match (exact, fitting.next(), fitting.next()) {
        (Some(option), ..) | (None, Some(option), None) => option,
        _ => answer,
    }
}

/// Reads the answer as a job file would.
fn check(question: &Question, value: &Value) -> Result<(), String> {
    if let (Form::OneOf(options), Some(word)) = (question.form, value.as_str())
        && !options.iter().any(|(option, _)| *option == word)
    {
        let options: Vec<&str> = options.iter().map(|(word, _)| *word).collect();
        return Err(format!("`{word}` is not one of {}", words::list(&options, "or")));
    }
    if let (Form::AnyOf(options), Some(words)) = (question.form, value.as_array()) {
        let known = |word: &&str| options.iter().any(|(option, _)| option == word);
        if let Some(other) = words.iter().filter_map(Value::as_str).find(|word| !known(word)) {
            return Err(format!("`{other}` is none of these words, or the beginning of several"));
        }
    }
    value::read(&format!("{}{} = {value}\n", question.place.opens(), question.key)).map(drop)
}

/// Position of a place in [`PLACES`].
pub fn place(place: Place) -> usize {
    PLACES.iter().position(|p| *p == place).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_and_every_example_can_be_written_down() {
        for question in questions::all() {
            let offered: Vec<&str> = match question.form {
                Form::OneOf(options) | Form::AnyOf(options) => options.iter().map(|(word, _)| *word).collect(),
                _ if question.example.is_empty() => vec![],
                _ => vec![question.example],
            };
            for answer in offered {
                let value = written(question, answer);
                assert_eq!(check(question, &value), Ok(()), "{}: {answer}", question.place.names(question.key));
            }
        }
    }

    #[test]
    fn the_beginning_of_a_word_is_enough_when_no_other_begins_so() {
        let kind = questions::all().find(|q| q.key == "kind" && q.place == Place::Table("boat")).expect("asked");
        assert_eq!(written(kind, "plan").as_str(), Some("planing"));
        assert_eq!(written(kind, "S").as_str(), Some("S"), "sailing or semi-displacement");
        assert!(check(kind, &written(kind, "S")).is_err());
    }
}
