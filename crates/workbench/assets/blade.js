// The propeller in the round on a plain canvas: farthest facets first, face and back in their own tone.
const canvas = document.getElementById("blade");
const reduced = matchMedia("(prefers-reduced-motion: reduce)");

if (canvas) {
  fetch(canvas.dataset.mesh)
    .then((answer) => (answer.ok ? answer.json() : Promise.reject(new Error(String(answer.status)))))
    .then(start)
    .catch(() => canvas.setAttribute("data-failed", ""));
}

const minus = (a, b) => a.map((x, k) => x - b[k]);
const cross = (u, v) => [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
const unit = (n) => {
  const length = Math.hypot(...n);
  return length > 0 ? n.map((x) => x / length) : null;
};

// Facets of a body: corners, normal outward, which side they are on, and the normal of the smooth surface for the light.
function facets(body, hub, longest) {
  const at = (i) => body.points.slice(3 * i, 3 * i + 3);
  const list = [];
  const smooth = new Map();
  for (let i = 0; i < body.triangles.length; i += 3) {
    const ids = body.triangles.slice(i, i + 3);
    const corners = ids.map(at);
    const area = cross(minus(corners[1], corners[0]), minus(corners[2], corners[0]));
    const n = unit(area);
    if (!n) continue;
    // x runs forward: what looks forward is the back, the suction side.
    const side = hub ? "hub" : n[0] > 0 ? "back" : "face";
    for (const id of ids) {
      const key = side + id;
      smooth.set(key, (smooth.get(key) ?? [0, 0, 0]).map((x, k) => x + area[k]));
    }
    list.push({ corners, n, side, ids });
  }
  return list.flatMap((f) => {
    const sum = f.ids.reduce((s, id) => {
      const n = unit(smooth.get(f.side + id)) ?? f.n;
      return s.map((x, k) => x + n[k]);
    }, [0, 0, 0]);
    // The hub is turned: its facets are lit as they stand, so that its ends stay edges.
    const lit = hub ? f.n : unit(sum) ?? f.n;
    return split(f.corners, longest).map(([a, b, c]) => ({ a, b, c, n: f.n, lit, side: f.side }));
  });
}

// Long facets hide others wrongly when the farthest are painted first: they are cut at their longest edge.
function split(corners, longest) {
  const edges = [0, 1, 2].map((i) => Math.hypot(...minus(corners[i], corners[(i + 1) % 3])));
  const most = edges.indexOf(Math.max(...edges));
  if (edges[most] <= longest) return [corners];
  const [a, b, c] = [0, 1, 2].map((k) => corners[(most + k) % 3]);
  const m = a.map((x, k) => (x + b[k]) / 2);
  return [...split([a, m, c], longest), ...split([m, b, c], longest)];
}

const VIEWS = { astern: [0, 0], ahead: [Math.PI, 0], side: [Math.PI / 2, 0] };

function start(round) {
  const longest = 0.16 * round.radius;
  const all = [...round.blades.flatMap((b) => facets(b, false, longest)), ...facets(round.hub, true, longest)];
  const paint = canvas.getContext("2d");
  let [yaw, pitch] = [0.6, 0.35];
  let nearer = 1;
  let turn = 0;
  let spinning = false;
  let due = false;

  function tones() {
    const style = getComputedStyle(canvas);
    const read = (name, other) => style.getPropertyValue(name).trim() || other;
    return { face: read("--fw-face", "#9db7c1"), back: read("--fw-back", "#d9a27c"), hub: read("--fw-hub", "#a9a49a") };
  }

  function rgb(hex) {
    return [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16));
  }

  function draw() {
    due = false;
    const ratio = window.devicePixelRatio || 1;
    const [w, h] = [canvas.clientWidth, canvas.clientHeight];
    if (canvas.width !== Math.round(w * ratio)) canvas.width = Math.round(w * ratio);
    if (canvas.height !== Math.round(h * ratio)) canvas.height = Math.round(h * ratio);
    paint.setTransform(ratio, 0, 0, ratio, 0, 0);
    paint.clearRect(0, 0, w, h);
    const tone = Object.fromEntries(Object.entries(tones()).map(([k, v]) => [k, rgb(v)]));
    const scale = (0.42 * Math.min(w, h) * nearer) / round.radius;
    const [ct, st, cy, sy, cp, sp] = [turn, yaw, pitch].flatMap((x) => [Math.cos(x), Math.sin(x)]);
    // Turned about the shaft, then looked at: right, up, towards the eye. Yaw 0 looks forward from astern.
    const place = ([x, y, z]) => {
      const [y1, z1] = [ct * y - st * z, st * y + ct * z];
      const [right, away] = [-y1 * cy + x * sy, x * cy + y1 * sy];
      return [right, z1 * cp - away * sp, -(away * cp + z1 * sp)];
    };
    const shown = [];
    for (const f of all) {
      const n = place(f.n);
      if (n[2] <= 0) continue;
      const p = [f.a, f.b, f.c].map(place);
      shown.push({ p, n: place(f.lit), side: f.side, z: p[0][2] + p[1][2] + p[2][2] });
    }
    shown.sort((a, b) => a.z - b.z);
    for (const { p, n, side } of shown) {
      const light = 0.45 + 0.55 * Math.max(0, 0.3 * n[0] + 0.45 * n[1] + 0.84 * n[2]);
      const colour = `rgb(${tone[side].map((x) => Math.round(x * light)).join(" ")})`;
      paint.fillStyle = colour;
      // Seams between facets are closed by a line of their own colour.
      paint.strokeStyle = colour;
      paint.beginPath();
      p.forEach(([x, y], i) => paint[i ? "lineTo" : "moveTo"](w / 2 + scale * x, h / 2 - scale * y));
      paint.closePath();
      paint.fill();
      paint.stroke();
    }
    canvas.dataset.drawn = String(shown.length);
    if (spinning) {
      // Clockwise seen from astern is a turn from up towards starboard, which is away from y, port.
      turn += 0.012 * round.turns;
      ask();
    }
  }

  function ask() {
    if (!due) {
      due = true;
      requestAnimationFrame(draw);
    }
  }

  function look(by, up) {
    yaw += by;
    pitch = Math.max(-1.5, Math.min(1.5, pitch + up));
    ask();
  }

  function zoom(by) {
    nearer = Math.max(0.5, Math.min(8, nearer * by));
    ask();
  }

  const fingers = new Map();
  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, [event.clientX, event.clientY]);
  });
  for (const over of ["pointerup", "pointercancel"]) {
    canvas.addEventListener(over, (event) => fingers.delete(event.pointerId));
  }
  canvas.addEventListener("pointermove", (event) => {
    const last = fingers.get(event.pointerId);
    if (!last) return;
    const now = [event.clientX, event.clientY];
    if (fingers.size === 1) {
      look((now[0] - last[0]) * 0.01, (now[1] - last[1]) * 0.01);
    } else {
      const [other] = [...fingers].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
      const span = (at) => Math.max(1, Math.hypot(at[0] - other[0], at[1] - other[1]));
      zoom(span(now) / span(last));
    }
    fingers.set(event.pointerId, now);
  });
  canvas.addEventListener("wheel", (event) => {
    event.preventDefault();
    zoom(Math.exp(-event.deltaY * 0.001));
  }, { passive: false });
  canvas.addEventListener("keydown", (event) => {
    const keys = {
      ArrowLeft: () => look(-0.1, 0), ArrowRight: () => look(0.1, 0), ArrowUp: () => look(0, -0.1),
      ArrowDown: () => look(0, 0.1), "+": () => zoom(1.15), "=": () => zoom(1.15), "-": () => zoom(1 / 1.15),
    };
    if (keys[event.key]) {
      event.preventDefault();
      keys[event.key]();
    }
  });
  for (const button of document.querySelectorAll("button[data-from]")) {
    button.addEventListener("click", () => {
      [yaw, pitch] = VIEWS[button.dataset.from];
      ask();
    });
  }
  for (const button of document.querySelectorAll("button[data-nearer]")) {
    button.addEventListener("click", () => zoom(Number(button.dataset.nearer)));
  }
  const spin = document.querySelector("button[data-spin]");
  function turning(on) {
    spinning = on;
    spin?.setAttribute("aria-pressed", String(on));
    ask();
  }
  spin?.addEventListener("click", () => turning(!spinning));
  reduced.addEventListener("change", () => turning(false));
  new ResizeObserver(ask).observe(canvas);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", ask);
  ask();
}
