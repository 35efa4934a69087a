"use strict";
// Shows only the cards that are asked for; without it all of them are there, family by family.
(() => {
  const form = document.getElementById("finding");
  const count = document.getElementById("count");
  const cards = [...document.querySelectorAll(".card")];
  const sections = [...document.querySelectorAll("main section")];
  const asked = [...form.elements].filter((one) => one.name);
  const folded = (text) => text.normalize("NFD").replace(/\p{Mn}/gu, "").toLowerCase();

  const fits = (card, words) =>
    words.every((word) => card.dataset.words.includes(word)) &&
    asked.every((one) => one.name === "words" || !one.value || card.dataset[one.name] === one.value);
  const show = () => {
    const words = folded(form.elements.words.value).split(/[\s-]+/).filter(Boolean);
    for (const card of cards) card.hidden = !fits(card, words);
    for (const section of sections) section.hidden = !section.querySelector(".card:not([hidden])");
    const found = cards.filter((card) => !card.hidden).length;
    count.textContent = count.dataset.says.replace("{found}", found).replace("{all}", cards.length);
    document.getElementById("nothing").hidden = found > 0;
  };
  // What is asked for stands in the page's address, so that it is there again on the way back from a block.
  const write = () => {
    const wishes = new URLSearchParams(asked.filter((one) => one.value).map((one) => [one.name, one.value]));
    try {
      history.replaceState(null, "", `#${wishes}`);
    } catch {
      // A browser that allows only so many changes of its address still finds.
    }
  };
  const read = () => {
    const wishes = new URLSearchParams(location.hash.slice(1));
    for (const one of asked) {
      one.value = wishes.get(one.name) ?? "";
      if (one.selectedIndex === -1) one.value = "";
    }
    show();
  };

  form.addEventListener("input", () => {
    show();
    write();
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () =>
    setTimeout(() => {
      show();
      write();
    }),
  );
  window.addEventListener("hashchange", read);
  document.getElementById("families").hidden = true;
  form.hidden = false;
  read();
})();
