// Runs in a browser: the same as on the command line, told to the server that gave the page.
const violations = [];
addEventListener('securitypolicyviolation', ({ violatedDirective, sourceFile }) =>
  violations.push(`${violatedDirective} ${new URL(sourceFile || location.href).pathname}`),
);
let told;
try {
  if (new URLSearchParams(location.search).has('frozen')) await import('/freeze.mjs');
  let evaluates = true;
  try {
    new Function('');
  } catch {
    evaluates = false;
  }
  if (evaluates) throw new Error('the policy of this page lets text be evaluated, so it shows nothing');
  await new Promise((resolve) => setTimeout(resolve, 50));
  violations.length = 0;
  const { conform } = await import('/conform.mjs');
  told = await conform();
  await new Promise((resolve) => setTimeout(resolve, 50));
  told.violations = [...new Set(violations)];
} catch (error) {
  told = { broke: `${error}\n${error?.stack}` };
}
await fetch('/told', { method: 'POST', body: JSON.stringify(told) });
