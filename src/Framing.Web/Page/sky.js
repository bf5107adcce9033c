// The sky picture with the panels over it. All geometry comes from the program: here are pixels alone.

import { get, send } from "./ask.js";
import { isRed } from "./palette.js";

const SVG = "http://www.w3.org/2000/svg";
const REST_MS = 700;

export class Sky {
  constructor(box, onFigures, onPlaced, onWrong) {
    this.box = box;
    this.picture = box.querySelector("img");
    this.svg = box.querySelector("svg");
    this.onFigures = onFigures;
    this.onPlaced = onPlaced;
    this.onWrong = onWrong;
    this.asking = false;
    this.hand = null;
    this.times = [];
    box.addEventListener("dragstart", (event) => event.preventDefault());
    box.addEventListener("pointerdown", (event) => this.down(event));
    box.addEventListener("pointermove", (event) => this.move(event));
    box.addEventListener("pointerup", (event) => this.up(event));
    box.addEventListener("pointercancel", (event) => this.up(event));
    box.addEventListener("keydown", (event) => this.key(event));
  }

  // The size in which the picture is asked for: that of the screen, in steps, so that a small change asks for nothing new.
  size() {
    const width = Math.min(1600, Math.max(320, Math.round(this.box.clientWidth / 40) * 40));
    return { width, height: Math.max(200, Math.round((width * this.box.clientHeight) / Math.max(1, this.box.clientWidth))) };
  }

  async show(mark) {
    const { width, height } = this.size();
    const sky = await get(`/api/sky?width=${width}&height=${height}`);
    this.mark = sky.mark;
    this.width = width;
    this.height = height;
    this.arcsec = sky.arcsecPerPx;
    this.sketch = sky.panels;
    this.start = { x: sky.panels.centre?.x, y: sky.panels.centre?.y };
    this.at = { ...this.start, turn: 0 };
    this.svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
    this.paintPicture();
    this.draw();
    this.onFigures(this.sketch);
  }

  paintPicture() {
    const source = `/sky.png?mark=${this.mark}&width=${this.width}&height=${this.height}&palette=${isRed() ? "night" : "day"}`;
    if (this.picture.getAttribute("src") !== source) {
      this.picture.src = source;
    }
  }

  draw() {
    const sketch = this.sketch;
    const made = [hatch()];
    if (sketch.fallsShort.length > 0) {
      made.push(element("path", { class: "short", "fill-rule": "evenodd", d: sketch.fallsShort.map(ring).join("") }));
    }
    const mosaic = element("g", { class: "mosaic" });
    for (const panel of sketch.panels) {
      mosaic.append(element("path", { class: "panel", d: ring(panel.corners), "data-panel": panel.number }));
    }
    if (sketch.panels.length > 1) {
      for (const panel of sketch.panels.filter((panel) => panel.centre)) {
        const number = element("text", { class: "number", x: panel.centre.x, y: panel.centre.y + 7 });
        number.textContent = panel.number;
        mosaic.append(number);
      }
    }
    const grip = this.grip();
    if (grip) {
      mosaic.append(element("line", { class: "arm", x1: sketch.centre.x, y1: sketch.centre.y, x2: grip.x, y2: grip.y }));
      mosaic.append(element("circle", { class: "grip", cx: grip.x, cy: grip.y, r: 11 }));
    }
    made.push(mosaic);
    this.svg.replaceChildren(...made);
    this.mosaic = mosaic;
  }

  // The grip stands on the way up out of the mosaic, as far as its farthest corner, inside the picture.
  grip() {
    const { centre, panels, leanDeg } = this.sketch;
    if (!centre || panels.length === 0) {
      return null;
    }
    const [sin, cos] = [Math.sin((leanDeg * Math.PI) / 180), Math.cos((leanDeg * Math.PI) / 180)];
    const out = Math.max(...panels.flatMap((panel) => panel.corners).map((p) => (p.x - centre.x) * sin - (p.y - centre.y) * cos)) + 26;
    const clamp = (value, most) => Math.min(most - 14, Math.max(14, value));
    return { x: clamp(centre.x + out * sin, this.width), y: clamp(centre.y - out * cos, this.height) };
  }

  place(event) {
    const box = this.box.getBoundingClientRect();
    return { x: ((event.clientX - box.left) * this.width) / box.width, y: ((event.clientY - box.top) * this.height) / box.height };
  }

  down(event) {
    const target = event.target.closest(".grip, .mosaic");
    if (!this.sketch?.centre || !target || event.button > 0) {
      return;
    }
    event.preventDefault();
    this.box.focus({ preventScroll: true });
    this.box.setPointerCapture(event.pointerId);
    const turns = event.target.classList.contains("grip");
    const from = this.place(event);
    this.hand = { turns, from, start: { ...this.at }, centre: { ...this.sketch.centre }, angle: Math.atan2(from.x - this.sketch.centre.x, this.sketch.centre.y - from.y) };
  }

  move(event) {
    if (!this.hand) {
      return;
    }
    const now = this.place(event);
    const { turns, from, start, centre, angle } = this.hand;
    if (turns) {
      // Clockwise in the picture is against the way position angles grow.
      const turned = ((angle - Math.atan2(now.x - centre.x, centre.y - now.y)) * 180) / Math.PI;
      this.at = { ...start, turn: start.turn + (((turned + 540) % 360) - 180) };
    } else {
      this.at = { ...start, x: start.x + now.x - from.x, y: start.y + now.y - from.y };
    }
    this.follow();
    this.ask();
  }

  // The panels follow the hand at once; the program's exact ones come a few milliseconds later.
  follow() {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      const { centre } = this.sketch;
      const turn = -(this.at.turn - (this.drawn?.turn ?? 0));
      this.mosaic.setAttribute("transform", `translate(${this.at.x - centre.x} ${this.at.y - centre.y}) rotate(${turn} ${centre.x} ${centre.y})`);
    });
  }

  async ask() {
    if (this.asking) {
      this.again = true;
      return;
    }
    this.asking = true;
    try {
      do {
        this.again = false;
        const at = { ...this.at };
        const begun = performance.now();
        const sketch = await send("/api/sketch", { mark: this.mark, width: this.width, height: this.height, x: at.x, y: at.y, turnDeg: at.turn });
        this.times.push(performance.now() - begun);
        this.sketch = sketch;
        this.drawn = at;
        this.draw();
        this.onFigures(sketch);
        this.follow();
      } while (this.again);
    } catch (wrong) {
      this.onWrong(wrong);
    } finally {
      this.asking = false;
    }
    if (this.placing) {
      this.placing = false;
      this.settle();
    }
  }

  up() {
    if (!this.hand) {
      return;
    }
    const moved = Math.hypot(this.at.x - this.hand.start.x, this.at.y - this.hand.start.y) > 0.5 || Math.abs(this.at.turn - this.hand.start.turn) > 0.01;
    this.hand = null;
    if (moved) {
      this.settle();
    }
  }

  key(event) {
    const coarse = event.shiftKey ? 10 : 1;
    const step = (120 * coarse) / this.arcsec;
    const moves = { ArrowLeft: [-step, 0, 0], ArrowRight: [step, 0, 0], ArrowUp: [0, -step, 0], ArrowDown: [0, step, 0], ",": [0, 0, -1], ".": [0, 0, 1] };
    const move = moves[event.key];
    if (!move || !this.sketch?.centre || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    event.preventDefault();
    this.at = { x: this.at.x + move[0], y: this.at.y + move[1], turn: this.at.turn + move[2] };
    this.follow();
    this.ask();
    clearTimeout(this.rest);
    this.rest = setTimeout(() => this.settle(), REST_MS);
  }

  // The hand rests: what was drawn becomes the plan.
  settle() {
    if (this.asking) {
      this.placing = true;
      return;
    }
    if (this.drawn && this.drawn.x === this.at.x && this.drawn.y === this.at.y && this.drawn.turn === this.at.turn) {
      this.drawn = null;
      this.onPlaced(this.sketch);
    } else {
      this.placing = true;
      this.ask();
    }
  }
}

function element(name, attributes) {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    made.setAttribute(key, value);
  }
  return made;
}

const ring = (points) => (points.length < 3 ? "" : `M${points.map((p) => `${p.x} ${p.y}`).join("L")}Z`);

function hatch() {
  const made = element("defs", {});
  const pattern = element("pattern", { id: "hatch", width: 9, height: 9, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" });
  pattern.append(element("line", { class: "hatch", x1: 0, y1: 0, x2: 0, y2: 9 }));
  made.append(pattern);
  return made;
}
