"use strict";
// Keeps the ticks of this sheet in this browser; without it everything can still be read and ticked.
(() => {
  const main = document.querySelector("main");
  const key = main.dataset.ticks;
  const boxes = [...main.querySelectorAll("input[data-step]")];
  const count = document.getElementById("count");
  const clear = document.getElementById("clear");

  const kept = () => {
    try {
      const steps = JSON.parse(localStorage.getItem(key));
      return Array.isArray(steps) ? steps : [];
    } catch {
      return [];
    }
  };
  const ticked = () => boxes.filter((box) => box.checked);
  const tell = () => {
    const done = ticked().length;
    count.textContent = count.dataset.says.replace("{done}", done).replace("{all}", boxes.length);
    clear.disabled = done === 0;
  };
  const restore = () => {
    const steps = kept();
    for (const box of boxes) box.checked = steps.includes(Number(box.dataset.step));
    tell();
  };
  const keep = () => {
    try {
      localStorage.setItem(key, JSON.stringify(ticked().map((box) => Number(box.dataset.step))));
    } catch {
      // A browser that keeps nothing for pages still counts.
    }
    tell();
  };

  for (const box of boxes) box.addEventListener("change", keep);
  clear.addEventListener("click", () => {
    for (const box of boxes) box.checked = false;
    keep();
    boxes[0].focus();
  });
  window.addEventListener("storage", restore);
  count.hidden = clear.hidden = false;
  restore();
})();
