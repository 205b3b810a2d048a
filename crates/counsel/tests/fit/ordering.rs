//! The order and its receipt.

use super::*;

#[test]
fn an_order_goes_out_in_one_line() {
    let sheet = order(&job(GOOD), &OPTIONS).expect("nothing is missing");
    assert_eq!(sheet.refused, Vec::<String>::new());
    for part in [
        "406.4 mm (16 in) x 279.4 mm (11 in)",
        "0.7 R",
        "3 blades",
        "right-hand",
        "ordinary blades",
        "flat-faced",
        "cup none",
        "bore 30",
        "1 in 10",
        "keyway 8",
        "manganese bronze",
        "class II",
        "G 6.3",
    ] {
        assert!(sheet.line.contains(part), "{part}: {}", sheet.line);
    }
    assert!(sheet.must_not_vary.contains("No equivalent"));
    assert_eq!(sheet.accepted, None);
}

/// What contradicts the job is refused, and says why.
#[test]
fn a_wrong_order_is_refused() {
    for (was, now, why) in [
        ("hand = \"right\"\nwidth", "hand = \"left\"\nwidth", "left-hand is ordered"),
        ("shaft = \"30 mm\"", "shaft = \"25 mm\"", "the shaft measures 30"),
        (
            "taper = \"1:10\"\nkey_width = \"8 mm\"\nmaterial",
            "taper = \"1:16\"\nkey_width = \"8 mm\"\nmaterial",
            "the shaft has 1:10",
        ),
        ("key_width = \"8 mm\"\nmaterial", "key_width = \"10 mm\"\nmaterial", "the key is 8"),
        (
            "diameter = \"16 in\"\npitch = \"11 in\"\nblades = 3\nhand",
            "diameter = \"20 in\"\npitch = \"7 in\"\nblades = 3\nhand",
            "ip to hull",
        ),
        ("class = \"II\"", "class = \"III\"", "below the duty"),
    ] {
        assert!(GOOD.contains(was), "{was}");
        let sheet = order(&job(&GOOD.replacen(was, now, 1)), &OPTIONS).expect("nothing is missing");
        assert!(sheet.refused.iter().any(|r| r.contains(why)), "{now}: {:?}", sheet.refused);
    }
    // One source for the hand is not enough, and no bore is no order.
    let bare = GOOD
        .replace("shaft_turns = \"right\"\n", "")
        .replace("engine_turns = \"left\"\n", "")
        .replace("hand = \"right\"\nwidth", "width");
    let sheet = order(&job(&bare), &OPTIONS).expect("nothing is missing");
    assert!(sheet.refused.iter().any(|r| r.contains("one fact")), "{:?}", sheet.refused);
}

/// Accept, ask, send back: by the class ordered.
#[test]
fn the_receipt_is_checked() {
    let with = |rows: &str| order(&job(&format!("{GOOD}[receipt]\n{rows}")), &OPTIONS).expect("nothing is missing");
    // Class II allows a mean pitch 1 % off (ISO 484-2); class III 3 %.
    let good = with(
        "pitch = \"281 mm\"\ndiameter = \"406 mm\"\nblades = 3\nleading_edge = \"right\"\nbore_large = \"30.05 mm\"\n",
    );
    assert_eq!(good.accepted, Some(true), "{:?}", good.received);
    let doubtful = with("pitch = \"285 mm\"\n");
    assert_eq!(doubtful.accepted, Some(false));
    assert!(doubtful.received.as_deref().is_some_and(|r| r.starts_with("Ask the workshop")), "{:?}", doubtful.received);
    for bad in ["pitch = \"300 mm\"", "leading_edge = \"left\"", "blades = 4", "bore_large = \"29 mm\""] {
        let back = with(bad);
        assert!(back.received.as_deref().is_some_and(|r| r.starts_with("Send it back")), "{bad}: {:?}", back.received);
    }
}

/// What the old propeller's blades had of room is not what the new one's have.
#[test]
fn an_order_of_wider_blades_takes_room_fore_and_aft() {
    let job = job(&GOOD.replace("width = \"ordinary\"\nsection", "area_ratio = 0.9\nsection"));
    let with = order::ordered(&job);
    let gap = |job: &job::Job| job.stern.ahead_clearance.as_ref().map_or(f64::NAN, |q| q.middle);
    // 0.4 more of area ratio: chord 2.073 x 0.4 x 0.4064/3 = 112 mm more, at atan(0.2794/(0.7 pi 0.4064)) = 17.4 degrees half of
    // it is 17 mm; the ratio assumed for the one fitted is known to 0.1.
    let taken = 1e3 * (gap(&job) - gap(&with));
    assert!((10.0..24.0).contains(&taken), "{taken}");
}
