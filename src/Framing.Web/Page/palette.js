// Day, or red on black; the choice stays on this device.

export function isRed() {
  return document.documentElement.classList.contains("red");
}

export function setRed(on) {
  document.documentElement.classList.toggle("red", on);
  try {
    localStorage.setItem("red", on ? "1" : "");
  } catch {
    // A browser that keeps nothing: red holds for this visit.
  }
}

export function restore() {
  try {
    document.documentElement.classList.toggle("red", localStorage.getItem("red") === "1");
  } catch {
    // As above.
  }
}
