// Runs axe over the page and hands back what is serious or critical.
const done = arguments[arguments.length - 1];
axe.run(document, { resultTypes: ['violations'] }).then(
  (found) =>
    done(
      found.violations
        .filter((one) => one.impact === 'serious' || one.impact === 'critical')
        .map((one) => `${one.impact} ${one.id}: ${one.help}: ` + one.nodes.slice(0, 3).map((node) => node.html).join(' | '))
    ),
  (failed) => done([`axe did not run: ${failed}`])
);
