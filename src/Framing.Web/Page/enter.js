// Exchanges the code for a cookie. A code that came behind the hash is wiped from the address at once.

import { send } from "./ask.js";

const code = document.getElementById("code");
const said = document.getElementById("wrong");
const carried = decodeURIComponent(location.hash.slice(1));
history.replaceState(null, "", "/enter");

async function enter(value) {
  try {
    await send("/api/enter", { code: value });
    location.replace("/mount");
  } catch (wrong) {
    said.textContent = wrong.message;
    code.focus();
  }
}

document.getElementById("form").addEventListener("submit", (event) => {
  event.preventDefault();
  void enter(code.value);
});
if (carried) {
  code.value = carried;
  await enter(carried);
}
