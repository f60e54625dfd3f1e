// The browser's own dialog for passkeys; what it answers is sent as a plain form.
'use strict';

const open = window.PublicKeyCredential && PublicKeyCredential.parseRequestOptionsFromJSON;
for (const note of document.querySelectorAll('[data-passkey-none]')) note.hidden = Boolean(open);

const answerOf = async (address, body) => {
  const reply = await fetch(address, { method: 'POST', body });
  if (!reply.ok) throw new Error(String(reply.status));
  const { options, state } = await reply.json();
  const answer = 'user' in options
    ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
    : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
  return { credential: JSON.stringify(answer.toJSON()), state };
};

for (const form of document.querySelectorAll('form[data-passkey]')) {
  form.hidden = !open;
  form.addEventListener('submit', async event => {
    if (form.elements.credential.value) return;
    event.preventDefault();
    const wrong = form.querySelector('[data-passkey-wrong]');
    wrong.textContent = '';
    try {
      const { credential, state } = await answerOf(form.dataset.passkey, new FormData(form));
      form.elements.credential.value = credential;
      form.elements.state.value = state;
      form.submit();
    } catch {
      wrong.textContent = wrong.dataset.passkeyWrong;
    }
  });
}

// A part of a larger form, whose own slab sends it afterwards: of what was typed nothing goes along, only whose form it is.
for (const part of document.querySelectorAll('[data-passkey-part]')) {
  const form = part.closest('form');
  const [credential, state] = part.querySelectorAll('input[type=hidden]');
  const wrong = part.querySelector('[data-passkey-wrong]');
  part.hidden = !open;
  part.querySelector('button').addEventListener('click', async () => {
    wrong.textContent = '';
    try {
      const body = new FormData();
      for (const name of ['__RequestVerificationToken', 'id']) body.set(name, form.elements[name].value);
      const answer = await answerOf(part.dataset.passkeyPart, body);
      credential.value = answer.credential;
      state.value = answer.state;
      form.requestSubmit();
    } catch {
      wrong.textContent = wrong.dataset.passkeyWrong;
    }
  });
}
