// The page: sentence, sky, panels. It holds nothing that is not in the plan file; a reload loses nothing.

import { degrees, get, send } from "./ask.js";
import { bestAngle, editorFor, free, placed } from "./editors.js";
import { isRed, restore, setRed } from "./palette.js";
import { Sky } from "./sky.js";

const by = (id) => document.getElementById(id);
const back = [];
const forth = [];
let plan = null;
let strategies = [];

restore();
const sky = new Sky(by("sky"), figures, (sketch) => change(placed(sketch, plan.form)), tell);
by("palette").setAttribute("aria-pressed", String(isRed()));

await start();

async function start() {
  try {
    const [first, found] = await Promise.all([get("/api/plan"), get("/api/strategies")]);
    strategies = found;
    await show(first);
    if (first.wasRecovered && !first.isSaved) {
      by("note").textContent = "Going on with changes that were not saved last time. Save keeps them.";
    }
  } catch (wrong) {
    tell(wrong);
  }
}

async function show(answer) {
  plan = answer;
  by("wrong").textContent = "";
  by("file").textContent = plan.fileName;
  by("saved").textContent = plan.isSaved ? "saved" : "not saved yet";
  by("save").disabled = plan.isSaved;
  by("undo").disabled = back.length === 0;
  by("redo").disabled = forth.length === 0;
  document.title = `${plan.report.title} · Framing`;
  sentence();
  list();
  night();
  by("best").disabled = !plan.form.centreIsFixed && plan.form.rotation !== "at-angle";
  await sky.show(plan.mark);
}

function sentence() {
  const parts = plan.sentence.map((part) => {
    if (!part.opens) {
      return document.createTextNode(part.text);
    }
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = part.text;
    button.dataset.opens = part.opens;
    button.setAttribute("aria-haspopup", "dialog");
    button.addEventListener("click", () => open(part.opens));
    return button;
  });
  by("sentence").replaceChildren(...parts);
}

function list() {
  const ofDate = plan.report.panels.length > 0;
  by("list-caption").textContent = ofDate ? "Type these numbers into the hand control." : (plan.report.impossible ?? "");
  by("list").replaceChildren(...plan.report.panels.map((panel) => {
    const row = document.createElement("tr");
    const isDone = plan.done.includes(panel.number);
    row.classList.toggle("done", isDone);
    const head = document.createElement("th");
    head.scope = "row";
    head.textContent = panel.number;
    const tick = document.createElement("input");
    tick.type = "checkbox";
    tick.checked = isDone;
    tick.setAttribute("aria-label", `Panel ${panel.number} is done`);
    tick.addEventListener("change", () => attempt(() => send("/api/tick", { number: panel.number, isDone: tick.checked })));
    row.append(head, ...[panel.entry.ra, panel.entry.dec, degrees(panel.positionAngleDeg)].map(cell), cell(tick));
    return row;
  }));
  by("cautions").replaceChildren(...[...plan.messages, ...plan.report.cautions].map((line) => {
    const item = document.createElement("li");
    item.textContent = line;
    return item;
  }));
}

function night() {
  by("night").hidden = !plan.hasNights;
  for (const item of document.querySelectorAll(".of-night")) {
    item.hidden = !plan.hasNights;
  }
  if (!plan.hasNights) {
    return;
  }
  paintNight();
  const clock = (time) => `${time.slice(0, 10)} ${time.slice(11, 16)} (UTC${time.slice(19)})`;
  const blocks = plan.report.nights.flatMap((one) => one.blocks);
  by("night-picture").alt = blocks.length === 0 ? "Band of the night: nothing can be shot" : "Band of the night: darkness, altitude of the panels over the skyline, the Moon and the blocks of the table below";
  by("blocks").replaceChildren(...blocks.map((block) => {
    const row = document.createElement("tr");
    row.append(...[block.panel, block.filter, clock(block.fromLocal), clock(block.toLocal), `${block.subsToShoot}, ${block.subsExpectedGood} good`, `${block.altitudeDeg.map((value) => Math.round(value)).join("–")}°`].map((value) => cell(String(value))));
    return row;
  }));
}

function paintNight() {
  if (plan?.hasNights) {
    by("night-picture").src = `/night.svg?mark=${plan.mark}&palette=${isRed() ? "night" : "day"}`;
  }
}

function cell(content) {
  const made = document.createElement("td");
  made.append(content);
  return made;
}

function figures(sketch) {
  const several = sketch.panels.length > 1;
  const times = sketch.chanceNoGap >= 0.9995 ? "999 times in 1000 or more" : `${Math.round(sketch.chanceNoGap * 100)} times in 100`;
  const shown = [
    ["Margin on the tight sides", sketch.marginArcmin >= 0 ? `${sketch.marginArcmin.toFixed(1)}′` : `falls short by ${(-sketch.marginArcmin).toFixed(1)}′`],
    ["Of the target covered", sketch.coveredFraction >= 1 - 1e-9 ? "100 %" : `${Math.min(99.9, sketch.coveredFraction * 100).toFixed(1)} %`],
    ["Camera angle", degrees(sketch.angleDeg)],
    ...(several ? [
      ["Least shared strip", sketch.leastOverlapArcmin === undefined || sketch.leastOverlapArcmin === null ? "none" : `${sketch.leastOverlapArcmin.toFixed(1)}′`],
      ["Gaps", sketch.gapArcmin2 > 0.005 ? `${sketch.gapArcmin2.toFixed(1)} square minutes` : "none"],
      [sketch.chanceIsDrawn ? "Closes" : "Closes, roughly", times],
    ] : []),
  ];
  by("figures").replaceChildren(...shown.map(([name, value]) => {
    const pair = document.createElement("div");
    const term = document.createElement("dt");
    term.textContent = name;
    const said = document.createElement("dd");
    said.textContent = value;
    pair.append(term, said);
    return pair;
  }));
}

function tell(wrong) {
  by("wrong").textContent = wrong.message;
  if (wrong.status === 409) {
    // Changed in another tab or by an editor: show the newest, keep the line.
    get("/api/plan").then(async (answer) => {
      await show(answer);
      by("wrong").textContent = wrong.message;
    }).catch(() => {});
  }
}

async function attempt(ask) {
  try {
    await show(await ask());
    return true;
  } catch (wrong) {
    tell(wrong);
    return false;
  }
}

async function change(edits) {
  const before = plan.text;
  const done = await attempt(() => send("/api/edit", { mark: plan.mark, edits }));
  if (done && plan.text !== before) {
    back.push(before);
    forth.length = 0;
    by("undo").disabled = false;
    by("redo").disabled = true;
  } else if (!done) {
    await sky.show(plan.mark).catch(tell);
  }
  return done;
}

async function step(from, to) {
  if (from.length === 0) {
    return;
  }
  const now = plan.text;
  const wanted = from.pop();
  to.push(now);
  if (!(await attempt(() => send("/api/put", { mark: plan.mark, text: wanted })))) {
    to.pop();
    from.push(wanted);
  }
}

function open(part) {
  const editor = editorFor(part, plan.form, strategies);
  by("editor-title").textContent = editor.title;
  by("editor-wrong").textContent = "";
  const fields = editor.fields.map(field);
  by("editor-fields").replaceChildren(...fields);
  const choice = by("editor-fields").querySelector("select[name=strategy]");
  const fit = () => {
    for (const block of by("editor-fields").querySelectorAll("[data-only]")) {
      block.hidden = block.dataset.only !== choice.value;
    }
  };
  if (choice) {
    choice.addEventListener("change", fit);
    fit();
  }
  by("editor-form").onsubmit = async (event) => {
    event.preventDefault();
    const values = {};
    for (const input of by("editor-fields").querySelectorAll("input, select")) {
      values[input.name] = input.type === "checkbox" ? input.checked : input.value;
    }
    const edits = editor.edits(values);
    if (edits.length === 0 || (await change(edits))) {
      by("editor").close();
      by("sentence").querySelector(`[data-opens="${part}"]`)?.focus();
    } else {
      by("editor-wrong").textContent = by("wrong").textContent;
    }
  };
  by("editor").showModal();
}

function field(wanted) {
  const block = document.createElement("div");
  if (wanted.note) {
    block.textContent = wanted.note;
    return block;
  }
  if (wanted.only) {
    block.dataset.only = wanted.only;
  }
  const label = document.createElement("label");
  label.textContent = wanted.label;
  const input = document.createElement(wanted.options ? "select" : "input");
  input.name = wanted.name;
  input.id = `field-${wanted.name.replaceAll(" ", "-")}`;
  label.htmlFor = input.id;
  if (wanted.options) {
    input.append(...wanted.options.map(([value, title]) => new Option(title, value)));
    input.value = wanted.value;
  } else {
    input.type = wanted.type ?? "text";
    for (const key of ["min", "max", "step"]) {
      if (wanted[key] !== undefined) {
        input[key] = wanted[key];
      }
    }
    if (input.type === "checkbox") {
      input.checked = Boolean(wanted.value);
    } else {
      input.value = wanted.value ?? "";
    }
  }
  block.append(label, input);
  if (wanted.hint) {
    const hint = document.createElement("p");
    hint.className = "hint";
    hint.textContent = wanted.hint;
    block.append(hint);
  }
  return block;
}

by("editor-leave").addEventListener("click", () => by("editor").close());
by("save").addEventListener("click", () => attempt(() => send("/api/save", { mark: plan.mark })));
by("undo").addEventListener("click", () => step(back, forth));
by("redo").addEventListener("click", () => step(forth, back));
by("best").addEventListener("click", () => change([...free({ ...plan.form, centreIsFixed: true }), ...bestAngle(plan.form)].filter((edit, i, all) => all.findIndex((other) => other.key === edit.key) === i)));
by("palette").addEventListener("click", () => {
  setRed(!isRed());
  by("palette").setAttribute("aria-pressed", String(isRed()));
  sky.paintPicture();
  paintNight();
});
document.addEventListener("keydown", (event) => {
  if ((event.ctrlKey || event.metaKey) && !event.altKey && !by("editor").open && !(event.target instanceof HTMLInputElement)) {
    const key = event.key.toLowerCase();
    if (key === "z" || key === "y") {
      event.preventDefault();
      void (key === "y" || event.shiftKey ? step(forth, back) : step(back, forth));
    } else if (key === "s") {
      event.preventDefault();
      by("save").click();
    }
  }
});
let resized;
addEventListener("resize", () => {
  clearTimeout(resized);
  resized = setTimeout(() => plan && sky.show(plan.mark).catch(tell), 250);
});
