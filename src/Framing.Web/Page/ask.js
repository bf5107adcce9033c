// Asks the program on this machine. What is wrong comes back as one line.

export class Wrong extends Error {
  constructor(status, line) {
    super(line);
    this.status = status;
  }
}

async function answer(response) {
  if (response.status === 401) {
    location.assign("/enter");
  }
  const document = await response.json().catch(() => ({ problem: "The program's answer cannot be read." }));
  if (!response.ok) {
    throw new Wrong(response.status, document.problem ?? `The program answered ${response.status}.`);
  }
  return document;
}

export async function get(path) {
  return answer(await reach(path, { headers: { Accept: "application/json" } }));
}

export async function send(path, body) {
  return answer(await reach(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) }));
}

// A bad link drops requests: what only reads is asked again, what changes something is not.
async function reach(path, options) {
  const tries = options.method ? 1 : 4;
  for (let i = 1; ; i++) {
    try {
      return await fetch(path, options);
    } catch {
      if (i === tries) {
        throw new Wrong(0, "The program does not answer. Is it still running, and is the link there?");
      }
      await new Promise((done) => setTimeout(done, 300 * i));
    }
  }
}

export const degrees = (value) => `${(Math.round(value * 10) / 10) % 360}°`;
