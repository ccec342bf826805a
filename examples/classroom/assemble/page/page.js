// The page holds no wording and no arithmetic of its own: what is typed goes through one door into the library, and
// what comes back is shown. This file moves texts between the two, and nothing else.
"use strict";

const root = document.getElementById("root");
const live = document.getElementById("live");
let state = null; // what the link holds
let board = null; // the drawing board that a pointer is on
let asked = 0; // a fuller answer that is to come
let opened = false; // a page is there, and the attention may be moved in it
let level = ""; // of the working

// ---- the door

function ask(request) {
  const box = document.getElementById("working-box");
  return maslinAnswer(Object.assign({
    state: state || { at: "" }, width: root.clientWidth, level, working: !!(box && box.open),
  }, request));
}

function show(answer) {
  state = answer.state;
  if (answer.page) {
    root.innerHTML = answer.page;
    document.title = answer.title;
    document.documentElement.lang = root.firstElementChild.lang || "en";
    const focus = opened && answer.focus && document.getElementById(answer.focus);
    opened = true;
    if (focus) focus.focus({ preventScroll: focus.id === "task-title" });
  } else if (answer.answer) {
    (document.getElementById("answer") || root).innerHTML = answer.answer;
  }
  const steps = document.getElementById("working");
  if (answer.working && steps) steps.innerHTML = answer.working;
  for (const [name, drawing] of Object.entries(answer.board || {})) {
    const place = document.querySelector(`[data-board="${CSS.escape(name)}"]`);
    if (place && !answer.page) place.innerHTML = drawing;
  }
  for (const [name, place] of Object.entries(answer.places || {})) {
    const slider = document.querySelector(`[data-slide="${CSS.escape(name)}"]`);
    if (!slider) continue;
    if (slider !== document.activeElement) slider.value = place;
    slider.setAttribute("aria-valuetext", document.getElementById("f-" + name).value);
  }
  mark(answer.problems || {});
  const short = document.getElementById("short");
  if (short) short.textContent = answer.headline || "";
  if (answer.status) live.textContent = answer.status;
}

// mark puts each problem at its field.
function mark(problems) {
  for (const input of root.querySelectorAll("[data-field], [data-path]")) {
    if (problems[input.dataset.field || input.dataset.path]) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }
  for (const note of root.querySelectorAll("[data-problem]")) {
    const name = note.dataset.problem;
    if (name === "guess") continue;
    const mine = Object.keys(problems).filter((path) => path === name || path.startsWith(name + "["));
    note.textContent = mine.map((path) => problems[path]).join(" ");
  }
}

// ---- what is typed

function collect() {
  const fields = Object.assign({}, state.fields);
  for (const input of root.querySelectorAll("[data-field]")) {
    if (input.value !== input.defaultValue || input.dataset.field in fields) fields[input.dataset.field] = input.value;
  }
  for (const box of root.querySelectorAll("[data-check]")) {
    if (box.checked || box.dataset.check in fields) fields[box.dataset.check] = box.checked ? "on" : "off";
  }
  const tables = new Map();
  for (const cell of root.querySelectorAll("[data-cell]")) {
    const rows = tables.get(cell.dataset.cell) || new Map();
    const row = cell.closest("tr");
    rows.set(row, (rows.get(row) || []).concat(cell.value.replace(/[|;]/g, " ")));
    tables.set(cell.dataset.cell, rows);
  }
  for (const [name, rows] of tables) fields[name] = [...rows.values()].map((cells) => cells.join("|")).join(";");
  const guess = root.querySelector("input#guess");
  const why = document.getElementById("why");
  return Object.assign({}, state, {
    fields, guess: guess ? guess.value : state.guess || "", why: why ? why.value : state.why || "",
  });
}

function typed(quick) {
  state = collect();
  show(ask({ do: "type", quick }));
  clearTimeout(asked);
  if (quick) asked = setTimeout(() => typed(false), 150);
  else remember();
}

// remember puts the state into the address, so that back, forward and a copied link lead here.
let remembering = 0;
function remember() {
  clearTimeout(remembering);
  remembering = setTimeout(() => {
    const link = ask({ do: "link" }).fragment;
    if (link !== location.hash) history.replaceState(null, "", link);
  }, 400);
}

function act(request) {
  clearTimeout(asked);
  clearTimeout(remembering);
  state = collect();
  const answer = ask(request);
  show(answer);
  if (answer.fragment !== location.hash) history.pushState(null, "", answer.fragment);
}

function visit() {
  const answer = ask({ do: "open", fragment: location.hash });
  show(answer);
  if (answer.fragment !== location.hash) history.replaceState(null, "", answer.fragment);
  window.scrollTo(0, 0);
}

// ---- events

root.addEventListener("input", (event) => {
  const input = event.target;
  if (input.dataset.slide) {
    document.getElementById("f-" + input.dataset.slide).value = input.dataset.stops.split("|")[input.value];
    if (state.at !== "worksheet") requestAnimationFrame(() => typed(true));
  } else if (state.at === "worksheet") {
    state = collect();
    remember();
  } else if (input.dataset.field || input.dataset.cell || input.id === "guess" || input.id === "why") {
    requestAnimationFrame(() => typed(input.tagName !== "SELECT"));
  }
});

root.addEventListener("change", (event) => {
  const input = event.target;
  if (input.dataset.choose === "level") {
    level = input.value;
    show(ask({ do: "working" }));
  } else if (input.dataset.choose) {
    act({ do: input.dataset.choose, name: input.value });
  } else if (state.at === "worksheet" && !String(input.dataset.field).startsWith("answer.")) {
    act({ do: "paper" });
    const again = document.getElementById(input.id) || document.querySelector(`[data-slide="${input.dataset.slide}"]`);
    if (again) again.focus();
  }
});

root.addEventListener("click", (event) => {
  const at = event.target.closest("[data-do], [data-focus], [data-print], [data-copy]");
  if (!at) return;
  if (at.dataset.do) act({ do: at.dataset.do, name: at.dataset.name || "", row: Number(at.dataset.row || 0) });
  else if (at.dataset.print) print(at.dataset.print);
  else if (at.dataset.copy) copy(at.dataset.copy, at.dataset.failed);
  else {
    event.preventDefault();
    const there = document.getElementById(at.dataset.focus);
    if (there) there.focus();
  }
});

function print(what) {
  document.body.dataset.print = what;
  window.print();
}
window.addEventListener("afterprint", () => { delete document.body.dataset.print; });

function copy(done, failed) {
  const say = (text) => { live.textContent = text; };
  state = collect();
  const link = location.href.split("#")[0] + ask({ do: "link" }).fragment;
  if (navigator.clipboard) navigator.clipboard.writeText(link).then(() => say(done), () => say(failed));
  else say(failed);
}

root.addEventListener("keydown", (event) => {
  if (event.key !== "Enter" || event.target.tagName !== "INPUT") return;
  const name = event.target.dataset.field || "";
  const id = event.target.id === "guess" ? "lock" : name.startsWith("answer.") ? "check-" + name.slice(7) : "";
  const button = id && document.getElementById(id);
  if (!button) return;
  event.preventDefault(); // or the same key presses the button that has the attention next
  button.click();
});

root.addEventListener("toggle", (event) => {
  if (event.target.id === "working-box" && event.target.open) show(ask({ do: "working" }));
}, true);

// A pointer on a board: where it is goes to the library as shares of the board.
function draw(event) {
  const box = board.querySelector("svg").getBoundingClientRect();
  show(ask({
    do: "draw", name: board.dataset.board, quick: true,
    across: (event.clientX - box.left) / box.width, down: (event.clientY - box.top) / box.height,
  }));
  refill(board.dataset.board);
  clearTimeout(asked);
  asked = setTimeout(() => typed(false), 150);
}

// refill writes the cells of a table that was drawn.
function refill(name) {
  const texts = ((state.fields || {})[name] || "").split(";").flatMap((row) => row.split("|"));
  root.querySelectorAll(`[data-cell="${CSS.escape(name)}"]`).forEach((cell, i) => {
    if (texts[i] !== undefined) cell.value = texts[i];
  });
}

root.addEventListener("pointerdown", (event) => {
  const place = event.target.closest("[data-board]");
  const fields = event.target.closest("fieldset");
  if (!place || !event.target.closest("svg") || (fields && fields.disabled)) return;
  board = place;
  state = collect();
  place.setPointerCapture(event.pointerId);
  draw(event);
});
root.addEventListener("pointermove", (event) => { if (board) requestAnimationFrame(() => board && draw(event)); });
for (const end of ["pointerup", "pointercancel"]) root.addEventListener(end, () => { board = null; });

window.addEventListener("popstate", visit);
let columns = window.innerWidth;
window.addEventListener("resize", () => {
  if (window.innerWidth === columns) return; // a phone's address bar moved
  columns = window.innerWidth;
  clearTimeout(asked);
  asked = setTimeout(() => state && state.at !== "worksheet" && typed(false), 250);
});

// ---- the beginning

async function library() {
  const held = document.getElementById("library");
  if (!held) return (await fetch("classroom.columns.gz")).body;
  const text = held.textContent; // seven bits to a character
  const bytes = new Uint8Array(Math.floor(text.length * 7 / 8));
  let got = 0, bits = 0, at = 0;
  for (let i = 0; i < text.length; i++) {
    got = (got << 7 | text.charCodeAt(i) & 127) & 0x7fff;
    bits += 7;
    if (bits >= 8) bytes[at++] = got >> (bits -= 8);
  }
  return new Blob([bytes]).stream();
}

async function begin() {
  const go = new Go();
  const plain = (await library()).pipeThrough(new DecompressionStream("gzip"));
  const bytes = new Uint8Array(await new Response(plain).arrayBuffer());
  const program = bytes[0] === 0 ? bytes : together(bytes); // a program as it is begins with 0
  const { module, instance } = await WebAssembly.instantiate(program, go.importObject);
  globalThis.maslinSection = (name) =>
    WebAssembly.Module.customSections(module, name).map((bytes) => new TextDecoder().decode(bytes)).join("");
  await new Promise((ready, failed) => {
    globalThis.maslinReady = ready;
    go.run(instance).then(() => failed(new Error("the library has ended")), failed);
  });
  visit();
  document.documentElement.dataset.ready = Math.round(performance.now());
}

begin().catch((error) => {
  document.getElementById("waiting").hidden = true;
  document.getElementById("broken").hidden = false;
  document.getElementById("broken-why").textContent = String((error && error.message) || error);
});
