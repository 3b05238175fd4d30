// 'begin' notes every place that Tab should reach and watches the focus; 'end' tells which places it did not reach or show.
const places = () =>
  [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]')].filter(
    (one) => one.type !== 'hidden' && !one.disabled && one.checkVisibility({ visibilityProperty: true }) && one.tabIndex >= 0
  );
const shown = (one) => {
  const style = getComputedStyle(one);
  const box = one.getBoundingClientRect();
  const outlined = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
  return outlined && box.width > 0 && box.right > 0 && box.bottom > 0 && box.top < innerHeight;
};
if (arguments[0] === 'begin') {
  window.walked = new Map();
  document.activeElement.blur();
  addEventListener('focusin', (event) => window.walked.set(event.target, shown(event.target)));
  return places().length;
}
const named = (one) => one.outerHTML.slice(0, 120);
return places().flatMap((one) =>
  !window.walked.has(one) ? ['not reached: ' + named(one)] : window.walked.get(one) ? [] : ['focus not seen: ' + named(one)]
);
