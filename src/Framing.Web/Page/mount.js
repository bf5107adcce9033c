// One panel at a time, for a telephone in the dark. Always red on black.

import { degrees, get, send } from "./ask.js";

const by = (id) => document.getElementById(id);
let plan = null;
let number = 1;

try {
  plan = await get("/api/plan");
  const open = plan.report.panels.find((panel) => !plan.done.includes(panel.number));
  number = Number(location.hash.slice(1)) || open?.number || 1;
  show();
} catch (wrong) {
  by("wrong").textContent = wrong.message;
}
await stayAwake();

function show() {
  const panels = plan.report.panels;
  number = Math.min(Math.max(1, number), panels.length);
  history.replaceState(null, "", `#${number}`);
  const panel = panels[number - 1];
  const isDone = plan.done.includes(number);
  by("wrong").textContent = "";
  by("panel").textContent = `Panel ${number} of ${panels.length}${isDone ? ", done" : ""}`;
  by("ra").textContent = panel.entry.ra;
  by("dec").textContent = panel.entry.dec;
  by("angle").textContent = degrees(panel.positionAngleDeg);
  const turn = plan.report.rotation.turnCameraDeg;
  by("turn").textContent = turn === undefined || Math.abs(turn) < 0.05 ? "" : `Turn the camera ${Math.abs(turn).toFixed(1)}° ${turn > 0 ? "counter-clockwise" : "clockwise"}, seen from behind the camera.`;
  by("before").disabled = number === 1;
  by("next").disabled = number === panels.length;
  by("done").textContent = isDone ? "Not done after all" : "Tick it off";
  by("done").setAttribute("aria-pressed", String(isDone));
}

by("before").addEventListener("click", () => { number--; show(); });
by("next").addEventListener("click", () => { number++; show(); });
by("done").addEventListener("click", async () => {
  try {
    plan = await send("/api/tick", { number, isDone: !plan.done.includes(number) });
    show();
  } catch (wrong) {
    by("wrong").textContent = wrong.message;
  }
});

async function stayAwake() {
  const said = by("awake");
  if (!("wakeLock" in navigator)) {
    said.textContent = "This browser cannot keep the screen awake here: set the telephone's own screen time longer.";
    return;
  }
  const hold = async () => {
    try {
      await navigator.wakeLock.request("screen");
      said.textContent = "The screen stays awake.";
    } catch {
      said.textContent = "The browser would not keep the screen awake: set the telephone's own screen time longer.";
    }
  };
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && hold());
  await hold();
}
