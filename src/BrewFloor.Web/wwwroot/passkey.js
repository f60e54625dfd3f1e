// The browser's own dialog for passkeys; what it answers is sent as a plain form.
'use strict';

const open = window.PublicKeyCredential && PublicKeyCredential.parseRequestOptionsFromJSON;
for (const note of document.querySelectorAll('[data-passkey-none]')) note.hidden = Boolean(open);

for (const form of document.querySelectorAll('form[data-passkey]')) {
  form.hidden = !open;
  form.addEventListener('submit', async event => {
    if (form.elements.credential.value) return;
    event.preventDefault();
    const wrong = form.querySelector('[data-passkey-wrong]');
    wrong.textContent = '';
    try {
      const reply = await fetch(form.dataset.passkey, { method: 'POST', body: new FormData(form) });
      if (!reply.ok) throw new Error(String(reply.status));
      const { options, state } = await reply.json();
      const answer = 'user' in options
        ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
        : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
      form.elements.credential.value = JSON.stringify(answer.toJSON());
      form.elements.state.value = state;
      form.submit();
    } catch {
      wrong.textContent = wrong.dataset.passkeyWrong;
    }
  });
}
