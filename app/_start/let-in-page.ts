/**
 * The page where another device types the passphrase. It stands alone, without script or pictures, because
 * nothing of the program is handed out before the passphrase. `action` is where the passphrase goes.
 */
export function letInPage(action: string, problem: string | undefined): string {
  const error = problem === undefined ? "" : `<p id="error" role="alert">${escape(problem)}</p>`;
  const tied = problem === undefined ? "" : ' aria-invalid="true" aria-describedby="error"';
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Let this device in · Noonbook</title>
<style>
:root { color-scheme: light dark; --paper: #fbf6ea; --ink: #26221b; --blue: #1f4f8f; --on: #fff; --line: #b9ac93; --stop: #a3271c; }
@media (prefers-color-scheme: dark) { :root { --paper: #1d1a16; --ink: #f2eadb; --blue: #9cc3f5; --on: #10233c; --line: #6d6353; --stop: #ff9d8f; } }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1.0625rem/1.5 system-ui, sans-serif; }
main { max-width: 26rem; margin: 12vh auto 0; padding: 0 1.25rem; }
h1 { font: italic 600 1.75rem/1.2 Georgia, serif; margin: 0 0 .75rem; }
label { display: block; font-weight: 600; margin: 1.25rem 0 .25rem; }
input { box-sizing: border-box; width: 100%; min-height: 48px; padding: .5rem .75rem; font: inherit; color: inherit; background: transparent; border: 1.5px solid var(--line); border-radius: 3px; }
button { margin-top: 1rem; min-height: 48px; padding: .5rem 1.5rem; font: inherit; font-weight: 700; color: var(--on); background: var(--blue); border: 0; border-radius: 24px; }
:focus-visible { outline: 3px solid var(--blue); outline-offset: 2px; }
#error { color: var(--stop); font-weight: 600; }
</style>
<main>
<h1>Noonbook</h1>
<p>Type the passphrase once, and this device is let in for thirty days.</p>
<form method="post" action="${escape(action)}">
<label for="passphrase">Passphrase</label>
<input id="passphrase" name="passphrase" type="password" autocomplete="current-password" required autofocus maxlength="200"${tied}>
${error}
<button type="submit">Let this device in</button>
</form>
</main>
</html>`;
}

function escape(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}
