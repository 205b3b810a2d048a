# The trade's terms, told to the owner of one boat.
explain-title = What the words mean, on your boat
explain-on-boat = On your boat
explain-said = Often said
explain-truth = What holds
explain-trust = How sure
explain-slide = Move it
explain-rests = Rests on
explain-list = Terms that can be explained
explain-no-job = Name a job file after the term to see it with your boat's numbers.

explain-parts = Parts of a propeller
explain-parts-plain = Blades stand on a hub that is bored to fit the shaft. Each blade has a leading edge that meets the water first, a trailing edge where the water leaves, a root at the hub and a tip. The side that looks aft is the face: it pushes. The side that looks forward is the back: it draws.
explain-parts-boat-boat = Each of the { $blades } tips runs a circle of { $path } m every turn, and at full throttle passes at { $tip }.
explain-parts-wrong = The back of the blade is the side you see from behind.
explain-parts-right = The back looks forward. It is the suction side, it does more than half of the work, and it is where metal is eaten first.
explain-parts-trust = Names as ISO 3715 and the trade use them.

explain-diameter = Diameter
explain-diameter-plain = Twice the distance from the middle of the shaft to a tip. It decides how much water the propeller takes hold of. Much water made a little faster pushes with less waste than a little water made much faster.
explain-diameter-boat-boat = Your { $inches } in ({ $mm } mm) sweep { $disc } m². At full throttle { $tonnes } of water go through every minute and leave { $added } faster than they came. An ideal propeller of that size would turn { $now } % of the power into push; one a tenth larger, { $larger } %.
explain-diameter-wrong = Measure from tip to tip.
explain-diameter-right = With three blades no tip stands opposite another. Measure from the shaft's centre to one tip and double it, on every blade. Leave 15 % of the diameter between tips and hull (common practice, no source).
explain-diameter-trust = Momentum of the wash, a textbook matter; the thrust is this boat's, with its doubt.

explain-pitch = Pitch
explain-pitch-plain = How far the blade's face would carry it in one turn if water were a nut. Unroll the turn and you have a triangle: the circle along the bottom, the pitch as its height. Near the hub the circle is short and the blade stands steep; at the tip it lies flat. The pitch is the same.
explain-pitch-boat-boat = Your mark says { $inches } in ({ $mm } mm). That is { $root }° at three tenths of the radius, { $mid }° at seven tenths and { $tip }° at the tip. The true pitch is likely { $true }; at full throttle the boat goes ahead { $advance } with every turn.
explain-pitch-wrong = A 14 in propeller moves 14 in in a turn.
explain-pitch-right = It moves less, and must: without slip there is no push. And the stamp is a claim; worn or repaired blades are often an inch off it.
explain-pitch-trust = Geometry is exact; the spread of stamps is common practice, no source.

explain-slip = Slip and efficiency
explain-slip-plain = Slip is what is missing between pitch and the way made in one turn. It is no loss: it is the angle at which the blade meets the water, and that angle makes the push. Efficiency is what comes out of the power put in. It is nought where there is no slip, and highest somewhere in between.
explain-slip-boat-boat = At full throttle your apparent slip is { $apparent }; counted in the water the hull drags along, { $real }. Efficiency in open water is { $efficiency }, of { $best } % this propeller could have at its best advance.
explain-slip-wrong = Less slip means a better propeller.
explain-slip-right = Slow heavy boats slip a third to a half with the right propeller, fast light ones a tenth to a quarter. Very little slip mostly means a wrong stamp, a wrong log or a propeller with nothing to do.
explain-slip-trust = Efficiency by a published propeller series; usual slips are common practice, no source.

explain-areas = Blade areas
explain-areas-plain = One blade has three areas. Expanded: every section laid flat. Developed: the blade untwisted. Projected: its shadow on a wall behind. Ratios are taken over the circle that the tips sweep.
explain-areas-boat-boat = Your blades have an expanded area ratio of { $ratio }; one blade is about { $blade } cm². The shadow is { $shadow } % of it, and carries { $load } at full throttle.
explain-areas-wrong = More blade means more push.
explain-areas-right = The same push spread over more area is quieter and boils less, but every square inch also rubs. Area is there to carry the load, no more.
explain-areas-trust = Projected area by Taylor's relation; it is good to a few per cent.

explain-blades = Number of blades
explain-blades-plain = More blades share the push: each pulse is smaller and comes more often. They also rub more and stand in each other's wake. Pitch and diameter have to follow.
explain-blades-boat-less = Your { $blades } blades knock at { $rate } at full throttle. With { $other } of the same outline, diameter and pitch the engine would turn { $difference } less; the speed would change by { $speed }.
explain-blades-boat-more = Your { $blades } blades knock at { $rate } at full throttle. With { $other } of the same outline, diameter and pitch the engine would turn { $difference } more; the speed would change by { $speed }.
explain-blades-boat-even = Your { $blades } blades knock at { $rate } at full throttle. With { $other } of the same outline, diameter and pitch the engine would change by { $difference }, the speed by { $speed }.
explain-blades-wrong = Four blades are always slower, three always faster.
explain-blades-right = The same boat can go as fast with either, when diameter and pitch are chosen for it. What changes is smoothness, drag under sail, and room in the aperture.
explain-blades-trust = By a published propeller series, which is one family of blades; castings differ.

explain-cup = Cup
explain-cup-plain = A lip bent into the trailing edge towards the face. It turns the water a little further, so it acts like more pitch, and it helps the blade to hold on where air or vapour comes in.
explain-cup-boat-has = Your blades carry a cup. A medium one is worth { $low } to { $high } mm of pitch here; without yours the engine would gain { $difference }.
explain-cup-boat-none = Your blades are said to have none, or nobody looked. A medium cup would be worth { $low } to { $high } mm of pitch, and cost the engine { $difference }.
explain-cup-wrong = Cup is grip that costs nothing.
explain-cup-right = It is pitch under another name, and the engine pays for it. A grinder takes it off in a minute, and with it 100 to 300 rpm are gone or won.
explain-cup-trust = What a cup is worth is common practice, no source; the band says so.

explain-rake = Rake
explain-rake-plain = How far the blades lean aft, seen from the side. Lean brings the tips away from a strut or the hull, and changes where the push lifts on fast boats with shallow propellers.
explain-rake-boat-boat = Your blades lean { $angle }° aft: the tips stand { $tip } mm behind a blade without rake.
explain-rake-boat-unknown = Nobody has measured yours. A straight edge across the hub and a rule to the tip will tell.
explain-rake-wrong = Rake makes speed.
explain-rake-right = It does on propellers that work at the surface. A few degrees on a submerged one move the tips and hardly the boat.
explain-rake-trust = Angle as measured; its worth is common practice, no source.

explain-skew = Skew
explain-skew-plain = How far the blade is swept back along the turn, seen from astern. A swept blade enters the slow water behind keel or deadwood bit by bit, and the knock becomes a push.
explain-skew-boat-boat = Your blades are swept through { $angle }°: { $share } % of the way to the next blade.
explain-skew-boat-unknown = Nobody has measured yours. A photograph from astern with a rule in it is enough to trace it.
explain-skew-wrong = Skew is for looks.
explain-skew-right = It is the gentlest cure for a blade that knocks past a thick deadwood. It costs strength at the trailing edge near the tip, and going astern.
explain-skew-trust = Angle as ITTC defines it; its worth is common practice, no source.

explain-hand = Hand
explain-hand-plain = The way the propeller turns going ahead, seen from astern, looking forward: clockwise is right-handed. On a right-handed blade standing up, the leading edge is on the right.
explain-hand-boat-right = Yours is right-handed, as you said. Look once more before anything is ordered: from the stamp, and from the blade itself.
explain-hand-boat-left = Yours is left-handed, as you said. Look once more before anything is ordered: from the stamp, and from the blade itself.
explain-hand-boat-pair = Yours are a pair, one of each. Mark them before they come off; in the wrong place, ahead becomes astern.
explain-hand-boat-unknown = Nobody has said which yours is. Look at an upright blade from astern: leading edge on the right, right-handed.
explain-hand-wrong = A left-handed propeller can be turned round to make a right-handed one.
explain-hand-right = Turned end for end it keeps its hand; only face and back change places. And the engine's turning is not the shaft's: most gearboxes reverse it.
explain-hand-trust = Definition as ISO 3715 has it.

explain-paddlewheel = Paddlewheel effect
explain-paddlewheel-plain = A propeller also pushes the stern sideways, as if it were a wheel on the bottom. Going astern it is strong: the wash climbs one side of the hull and no rudder stands in it. Going ahead it is weak and the rudder hides it.
explain-paddlewheel-boat-right = Right-handed: astern, the stern walks to port. Ahead it goes a little to starboard. The shaft slopes { $angle }.
explain-paddlewheel-boat-left = Left-handed: astern, the stern walks to starboard. Ahead it goes a little to port. The shaft slopes { $angle }.
explain-paddlewheel-boat-twin = With two that turn opposite ways it cancels when both pull alike, and turns the boat when one goes ahead and one astern. The shafts slope { $angle }.
explain-paddlewheel-boat-unknown = Nobody has said which hand yours is. Ten seconds astern from rest, in still water, will tell: to port means right-handed. The shaft slopes { $angle }.
explain-paddlewheel-wrong = The lower blade works in denser water.
explain-paddlewheel-right = Half a metre of depth changes the density by nothing one could measure. What counts is the wash on the hull, the slope of the shaft and the slow water near the stern. Explanations disagree; the test on your boat does not.
explain-paddlewheel-trust = Direction is common practice, no source; how strongly, nobody can compute for your hull: time it both ways.

explain-twin = One propeller or two
explain-twin-plain = Two share the push, stand clear of the keel and steer by themselves. Turning opposite ways, their sideways pushes cancel. Outward at the top, sideways push and lever add when one goes astern; inward, they work against each other.
explain-twin-boat-single = You have one: it makes all the push, { $thrust } at full throttle from { $power }, and all the sideways push too. ({ $screws } engine)
explain-twin-boat-pair = You have { $screws } that turn opposite ways: { $thrust } each at full throttle, { $power } from each engine.
explain-twin-boat-same = You have { $screws } of the same hand: { $thrust } each at full throttle, { $power } from each engine. Their sideways pushes add.
explain-twin-boat-unknown = You have { $screws }; nobody has said which way they turn. { $thrust } each at full throttle, { $power } from each engine.
explain-twin-wrong = Two engines at the same rpm carry the same load.
explain-twin-right = Only if propellers, ratios and rev counters are alike. An inch of pitch between them shifts a good part of the load. Swap the counters first.
explain-twin-trust = Load by the balance of hull, propeller and engine; handling is common practice, no source.

explain-ventilation = Ventilation and cavitation
explain-ventilation-plain = Ventilation: air is drawn down from the surface. The engine races at once, in turns and waves. Cavitation: the water itself boils where the blade's back draws too hard. It rattles like gravel, comes with load, and eats metal.
explain-ventilation-boat-deep = Over your tips stand { $water } of water: air is unlikely. At full throttle { $back } of the blades' back cavitates.
explain-ventilation-boat-shallow = Over your tips stand only { $water } of water: air can come in waves and turns. At full throttle { $back } of the blades' back cavitates.
explain-ventilation-boat-breaks = Your tips stand { $water } below the surface, so they may break it: air is likely. At full throttle { $back } of the blades' back cavitates.
explain-ventilation-wrong = Bubbles behind the boat mean cavitation.
explain-ventilation-right = Bubbles are air. To tell them apart, help the boat along with sail or tow: cavitation goes when the load goes. Move weight aft or slow down in a turn: ventilation goes when the tips are deep.
explain-ventilation-trust = Cavitation after Burrill 1943, a chart with scatter; water over the tips is common practice, no source.

explain-curves = Engine and propeller curves
explain-curves-plain = The engine has a limit at every speed. The propeller asks for power that grows about with the cube of its turns. Where the two meet is full throttle, the only point a skipper sees. A propeller that meets the limit too early holds the engine in overload everywhere above.
explain-curves-boat-below = Yours meet at { $speed }, giving { $power }. The rating asks for { $from } to { $to } rpm clean and loaded: too much propeller, { $chance }.
explain-curves-boat-above = Yours meet at { $speed }, giving { $power }. The rating asks for { $from } to { $to } rpm clean and loaded: too little propeller, { $chance }.
explain-curves-boat-inside = Yours meet at { $speed }, giving { $power }. The rating asks for { $from } to { $to } rpm clean and loaded: right, { $chance }.
explain-curves-wrong = It revs freely in neutral and does not smoke, so the engine is well.
explain-curves-right = Neutral proves governor and cable. An engine can be overloaded without smoke. Only full throttle under way, clean and loaded, shows where the two meet.
explain-curves-trust = Maker's curve where you gave one, else the usual one of its kind; the band is the maker's where stated.

explain-measuring = Measuring and proving
explain-measuring-plain = A run one way carries the whole current; the mean of both ways does not. A rev counter can be off by hundreds. Change one thing, then measure the same way again.
explain-measuring-boat-boat = A counter that is 5 % off misleads you by { $off } rpm. An inch less pitch is worth { $inch } on your boat, so that fault alone looks like { $wrong } in of pitch. Your speed at full throttle should be { $speed }.
explain-measuring-wrong = An inch of pitch is always 200 rpm.
explain-measuring-right = It is anything from 50 to 600, by hull, engine and propeller. Have it worked out for your boat, and prove it.
explain-measuring-trust = By this boat's own crowd; the spread among boats is collected from public cases.

explain-sailing = Drag under sail
explain-sailing-plain = A propeller that does not drive is a brake. Held fast it drags most, turning freely less, folded or feathered hardly at all.
explain-sailing-boat-motor = Yours is no sailing boat: there is nothing to count.
explain-sailing-boat-fixed = At 5 kn: held fast { $locked }, turning freely { $free }, folded { $folded }. Held fast that is { $share } % of what the hull itself asks, about { $hull } N.
explain-sailing-boat-folds = At 5 kn, folded: { $folded }, which is { $share } % of what the hull itself asks, about { $hull } N. A fixed one of this size would drag { $locked } held fast and { $free } turning freely.
explain-sailing-wrong = Lock it: a turning propeller brakes like a helicopter's rotor coming down.
explain-sailing-right = Towing tank tests found up to twice the drag with the shaft locked. But let it turn only if the gearbox maker allows it; some wear out without oil pressure. Two blades hidden behind a keel are a case of their own.
explain-sailing-trust = MacKenzie and Forrester 2008; coefficients from memory, a third either way.
