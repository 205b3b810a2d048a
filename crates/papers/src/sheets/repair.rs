//! The repair sheet: what the workshop is to do, radius by radius, and room to say what was done.

use super::{Desk, Kind};
use crate::speak::printable;
use crate::{Block, Cell, Column, Paper, Table};
use counsel::Lack;
use counsel::survey::report::{BalanceSheet, RepairRow};

/// Draws it up.
pub fn paper(desk: &Desk) -> Result<Paper, Lack> {
    let survey = desk.answers.survey.as_ref().map_err(Clone::clone)?;
    let v = desk.voice;
    let repair = &survey.repair;
    let mut blocks = vec![Block::Boxed { text: v.with("papers-repair-target", &[("what", &v.words(&repair.target))]) }];
    for caution in &repair.cautions {
        blocks.push(desk.caution(v.sentence(caution)));
    }
    blocks.push(desk.caution(v.sentence(&repair.no_weld)));
    blocks.push(desk.heading("papers-steps"));
    let items = repair.steps.iter().map(|step| v.sentence(step)).collect();
    blocks.push(Block::List { numbered: true, items });
    if repair.rows.is_empty() {
        blocks.push(Block::Text { text: desk.say("papers-no-rows") });
    } else {
        blocks.push(desk.heading("papers-repair-table"));
        blocks.push(table(desk, &repair.rows));
    }
    blocks.extend(repair.balance.as_ref().map(|b| balance(desk, b)).unwrap_or_default());
    blocks.push(Block::Lines {
        lines: vec![
            desk.blank("papers-crack-test", "papers-crack-choice"),
            desk.blank("papers-edges-done", ""),
            desk.blank("papers-balance-left", "g"),
            desk.blank("papers-stamped", ""),
        ],
    });
    blocks.push(desk.heading("papers-room"));
    blocks.push(Block::Room { lines: 3 });
    blocks.push(desk.signed());
    blocks.extend(desk.small_print(&[], &survey.accuracy.sources));
    Ok(desk.paper(Kind::Repair, blocks))
}

fn table(desk: &Desk, rows: &[RepairRow]) -> Block {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-blade"), 1),
        Column::number("r/R"),
        Column::number(desk.say("papers-radius-mmin")),
        Column::number(desk.say("papers-before-mmin")),
        Column::number(desk.say("papers-target-mmin")),
        Column::number(desk.say("papers-correction")),
        Column::number(desk.say("papers-twist")),
        Column::text(desk.say("papers-action"), 3),
        Column::text(desk.say("papers-after"), 3),
    ];
    let rows = rows
        .iter()
        .map(|r| {
            let act = r.action == "twist";
            let action = v.words(r.action);
            let step = |value: f64, step| {
                let text = v.number(value, step);
                if value > 0.0 { format!("+{text}") } else { text }
            };
            vec![
                printable(&r.blade).into(),
                v.number(r.radius_ratio, 0.01).into(),
                v.both(r.radius).into(),
                v.both(r.before).into(),
                Cell::strong(v.both(r.target)),
                if act { step(r.correction, 0.1).into() } else { Cell::from("") },
                if act { step(r.twist, 0.1).into() } else { Cell::from("") },
                if act { Cell::strong(action) } else { action.into() },
                Cell::blank(),
            ]
        })
        .collect();
    Block::Table { table: Table { columns, rows } }
}

fn balance(desk: &Desk, balance: &BalanceSheet) -> Vec<Block> {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-class-short"), 1),
        Column::number(desk.say("papers-grams")),
        Column::number(desk.say("papers-grade")),
    ];
    let rows = balance
        .rows
        .iter()
        .map(|r| vec![Cell::from(r.class.word()), v.digits(r.allowed, 2).into(), v.digits(r.grade, 2).into()])
        .collect();
    vec![
        desk.heading("papers-balance"),
        Block::Table { table: Table { columns, rows } },
        Block::Text { text: v.sentence(&balance.statement) },
    ]
}
