'use strict';
(() => {
//PLAYER
const D = JSON.parse(byId('data').textContent);
const form = byId('choices'), shown = player(D);

// choices: each narrows those after it
const chosen = () => D.choices.map(name => form.elements[name].value);
function narrow() {
  let left = D.clips;
  D.choices.forEach((name, at) => {
    const has = new Set(left.map(one => one.by[at]));
    const inputs = [...form.querySelectorAll(`input[name="${name}"]`)];
    for (const input of inputs) {
      input.parentElement.hidden = input.disabled = !has.has(input.value);
    }
    if (!inputs.some(input => input.checked && !input.disabled)) inputs.find(input => !input.disabled).checked = true;
    inputs[0].closest('fieldset').hidden = has.size < 2;
    const value = form.elements[name].value;
    left = left.filter(one => one.by[at] === value);
  });
  return left[0];
}

form.addEventListener('change', () => shown.show(narrow()));
form.addEventListener('submit', event => event.preventDefault());
lights();

if (D.clips.length) {
  D.choices.forEach((name, at) => { form.elements[name].value = D.opens[at]; });
  shown.show(narrow());
}
})();
