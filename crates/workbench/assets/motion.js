// Motion only where the thing moves in the world: a helix advancing, blades turning, a stern walking. It stands still for
// those who asked for stillness, until they press the button.
const reduced = matchMedia("(prefers-reduced-motion: reduce)");

for (const canvas of document.querySelectorAll("canvas[data-scene]")) begin(canvas);

function begin(canvas) {
  const scene = { helix, turning, walking }[canvas.dataset.scene];
  const button = canvas.parentElement.querySelector("button");
  const paint = canvas.getContext("2d");
  let moving = !reduced.matches;
  let clock = 0.35;
  let last = null;

  function draw(now) {
    const style = getComputedStyle(canvas);
    const colour = (name, other) => style.getPropertyValue(name).trim() || other;
    const ink = {
      ink: colour("--fw-ink", "#1b2a33"), second: colour("--fw-second", "#5b6b73"), water: colour("--fw-water", "#dce9ec"),
      paper: colour("--fw-paper", "#fbfaf6"),
    };
    const ratio = window.devicePixelRatio || 1;
    const [w, h] = [canvas.clientWidth, canvas.clientHeight];
    canvas.width = Math.round(w * ratio);
    canvas.height = Math.round(h * ratio);
    paint.setTransform(ratio, 0, 0, ratio, 0, 0);
    paint.font = "14px system-ui, sans-serif";
    paint.clearRect(0, 0, w, h);
    if (moving && last !== null) clock += Math.min(0.1, (now - last) / 1000);
    last = now;
    scene(paint, w, h, clock, canvas.dataset, ink);
    if (moving) requestAnimationFrame(draw);
  }

  function set(on) {
    moving = on;
    last = null;
    button.textContent = on ? button.dataset.pause : button.dataset.play;
    requestAnimationFrame(draw);
  }

  button.addEventListener("click", () => set(!moving));
  reduced.addEventListener("change", () => set(!reduced.matches));
  addEventListener("resize", () => requestAnimationFrame(draw));
  set(moving);
}

const TURNS = 3;

// Two ways of one blade tip, seen from the side: by its pitch, and with the way the boat makes.
function helix(paint, w, h, clock, data, ink) {
  const [pitch, advance, words] = [Number(data.pitch), Number(data.advance), data.words.split("|")];
  const room = w - 40;
  const scale = room / (TURNS * Math.max(pitch, advance));
  // Each band has its word above it.
  const reach = Math.max(8, Math.min(0.25 * h - 18, 0.5 * Number(data.diameter) * scale));
  const share = (clock * 0.16) % 1.15;
  [[pitch, words[0], 0.25, ink.second], [advance, words[1], 0.75, ink.ink]].forEach(([step, word, at, colour]) => {
    const y = at * h + 9;
    paint.fillStyle = ink.water;
    paint.fillRect(20, y - reach, TURNS * step * scale, 2 * reach);
    paint.strokeStyle = colour;
    paint.lineWidth = 2;
    paint.beginPath();
    const done = Math.min(1, share) * TURNS;
    for (let turn = 0; turn <= done; turn += 0.01) {
      paint.lineTo(20 + turn * step * scale, y - reach * Math.cos(2 * Math.PI * turn));
    }
    paint.stroke();
    paint.lineWidth = 1;
    for (let turn = 0; turn <= TURNS; turn += 1) {
      paint.beginPath();
      paint.moveTo(20 + turn * step * scale, y - reach);
      paint.lineTo(20 + turn * step * scale, y + reach + 4);
      paint.stroke();
    }
    const [x, tip] = [20 + done * step * scale, y - reach * Math.cos(2 * Math.PI * done)];
    paint.fillStyle = colour;
    paint.beginPath();
    paint.arc(x, tip, 5, 0, 2 * Math.PI);
    paint.fill();
    paint.fillText(`${word}: ${Math.round(1000 * step)} mm`, 20, y - reach - 7);
  });
}

// Blades seen from astern, going ahead.
function turning(paint, w, h, clock, data, ink) {
  const blades = Number(data.blades);
  const hand = data.left === "true" ? -1 : 1;
  const radius = 0.42 * h;
  paint.save();
  paint.translate(w / 2, h / 2);
  paint.strokeStyle = ink.second;
  paint.setLineDash([4, 4]);
  paint.beginPath();
  paint.arc(0, 0, radius, 0, 2 * Math.PI);
  paint.stroke();
  paint.setLineDash([]);
  paint.rotate(hand * clock * 0.9);
  for (let i = 0; i < blades; i += 1) {
    paint.rotate((2 * Math.PI) / blades);
    paint.beginPath();
    paint.moveTo(0, -0.16 * radius);
    paint.bezierCurveTo(0.62 * radius, -0.3 * radius, 0.42 * radius, -radius, 0, -radius);
    paint.bezierCurveTo(-0.42 * radius, -radius, -0.45 * radius, -0.4 * radius, 0, -0.16 * radius);
    paint.fillStyle = ink.water;
    paint.fill();
    paint.strokeStyle = ink.second;
    paint.lineWidth = 1;
    paint.stroke();
    // The leading edge is the one that goes first.
    paint.strokeStyle = ink.ink;
    paint.lineWidth = 3;
    paint.beginPath();
    if (hand > 0) {
      paint.moveTo(0, -0.16 * radius);
      paint.bezierCurveTo(0.62 * radius, -0.3 * radius, 0.42 * radius, -radius, 0, -radius);
    } else {
      paint.moveTo(0, -radius);
      paint.bezierCurveTo(-0.42 * radius, -radius, -0.45 * radius, -0.4 * radius, 0, -0.16 * radius);
    }
    paint.stroke();
  }
  paint.fillStyle = ink.ink;
  paint.beginPath();
  paint.arc(0, 0, 0.17 * radius, 0, 2 * Math.PI);
  paint.fill();
  paint.restore();
}

// From above, bow to the right: astern from rest, a right-handed propeller takes the stern to port.
function walking(paint, w, h, clock, data, ink) {
  const single = Number(data.screws) < 2;
  const way = single ? (data.left === "true" ? -1 : 1) : 0;
  const share = Math.min(1, (clock % 6) / 4.5);
  const [length, beam] = [0.42 * w, 0.26 * h];
  const swing = 0.42 * share * share * way;
  paint.fillStyle = ink.water;
  paint.fillRect(0, 0, w, h);
  const hull = (x, angle, ghost) => {
    paint.save();
    // The boat turns about a point well forward; the stern moves.
    paint.translate(x + 0.3 * length, h / 2);
    paint.rotate(angle);
    paint.translate(-0.3 * length, 0);
    paint.beginPath();
    paint.moveTo(-0.5 * length, -0.36 * beam);
    paint.bezierCurveTo(0, -0.62 * beam, 0.3 * length, -0.4 * beam, 0.5 * length, 0);
    paint.bezierCurveTo(0.3 * length, 0.4 * beam, 0, 0.62 * beam, -0.5 * length, 0.36 * beam);
    paint.closePath();
    paint.setLineDash(ghost ? [4, 4] : []);
    paint.strokeStyle = ghost ? ink.second : ink.ink;
    paint.lineWidth = ghost ? 1 : 2;
    if (!ghost) {
      paint.fillStyle = ink.paper;
      paint.fill();
    }
    paint.stroke();
    paint.restore();
  };
  hull(0.58 * w, 0, true);
  // Canvas angles run clockwise with the bow to the right: the stern swings up, to port, when the bow goes down.
  hull(0.58 * w - 0.12 * w * share, swing, false);
}
