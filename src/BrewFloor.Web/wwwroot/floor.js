// What makes the floor pages livelier. Every page works without it.
'use strict';

const main = () => document.getElementById('main');
const pageForm = () => document.querySelector('form[data-entry]');
let touched = false; // somebody typed: the page must not change under their hands

document.addEventListener('input', event => { if (event.target.closest('main form')) touched = true; });

// Asks the floor while the form is being filled in. The same page answers, with nothing stored.
let asking;
const ask = async form => {
  asking?.abort();
  asking = new AbortController();
  const body = new FormData(form);
  body.set('check', 'true');
  try {
    const reply = await fetch(form.action || location.href, { method: 'POST', body, signal: asking.signal });
    if (!reply.ok || reply.redirected) return;
    const page = new DOMParser().parseFromString(await reply.text(), 'text/html');
    const now = form.querySelector('[data-verdict]'), then = page.querySelector('[data-verdict]');
    if (now && then && now.innerHTML !== then.innerHTML) now.innerHTML = then.innerHTML;
  } catch { /* no signal: the floor is asked again when the form is sent */ }
};

let soon;
document.addEventListener('change', event => {
  const form = event.target.closest('form[data-entry]');
  if (!form || event.target.closest('[data-verdict]')) return;
  clearTimeout(soon);
  soon = setTimeout(() => ask(form), 150);
});

// A calculator answers while somebody types: the same page is asked, and its address keeps the numbers.
const calculate = async form => {
  asking?.abort();
  asking = new AbortController();
  const address = `${form.action}?${new URLSearchParams(new FormData(form))}`;
  try {
    const reply = await fetch(address, { signal: asking.signal });
    if (!reply.ok || reply.redirected) return;
    const page = new DOMParser().parseFromString(await reply.text(), 'text/html');
    for (const now of document.querySelectorAll('[data-note], [data-live-part]')) {
      const then = page.getElementById(now.id);
      if (!then || now.innerHTML === then.innerHTML) continue;
      const open = [...now.querySelectorAll('details')].map(part => part.open);
      now.innerHTML = then.innerHTML;
      now.querySelectorAll('details').forEach((part, i) => { part.open = open[i] ?? part.open; });
    }
    for (const field of form.querySelectorAll('input[id]')) field.ariaInvalid = page.getElementById(field.id)?.ariaInvalid ?? null;
    history.replaceState(null, '', address);
  } catch { /* no signal: the slab asks again */ }
};

document.addEventListener('input', event => {
  const form = event.target.closest('form[data-calculator]');
  if (!form) return;
  clearTimeout(soon);
  soon = setTimeout(() => calculate(form), 150);
});

let leaving = false;
document.addEventListener('submit', event => {
  leaving = !event.defaultPrevented;
  const slab = event.submitter;
  if (!slab?.dataset.waiting) return;
  setTimeout(() => { slab.textContent = slab.dataset.waiting; }, 500); // a post on its way must not be stopped by a dead button
});

// Follows what happens on the floor. A page that somebody types in only says that it is older.
const reload = async () => {
  if (touched || pageForm()) return;
  try {
    const reply = await fetch(location.href, { headers: { accept: 'text/html' } });
    if (!reply.ok || reply.redirected) return;
    const page = new DOMParser().parseFromString(await reply.text(), 'text/html');
    for (const part of ['main', 'nav.ways', '.as-of']) {
      const now = document.querySelector(part), then = page.querySelector(part);
      if (now && then) now.replaceWith(then);
    }
    live(true);
  } catch { live(false); }
};

const live = on => { const mark = document.querySelector('[data-live]'); if (mark && on) mark.textContent = mark.dataset.live || mark.textContent; };

if (document.querySelector('nav.ways') && 'EventSource' in window) {
  const events = new EventSource('live');
  let wasOpen = false, pending;
  const changed = () => { clearTimeout(pending); pending = setTimeout(reload, 60); };
  events.onopen = () => { if (wasOpen) changed(); wasOpen = true; live(true); }; // what was missed comes right behind
  events.addEventListener('over', () => { events.close(); if (!leaving) location.reload(); }); // signed out elsewhere
  for (const kind of ['entry', 'jobs', 'thing']) events.addEventListener(kind, changed);
}
