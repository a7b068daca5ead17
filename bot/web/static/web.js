// Completes what is typed, copies links, and puts the reader where the answer
// is. Every page works without it.
'use strict';

// complete offers ways to go on with what is typed in a field, as a list below
// it that the arrow keys walk.
function complete(field) {
  const box = document.createElement('div');
  box.className = 'completing';
  field.before(box);
  box.append(field);
  const list = document.createElement('ul');
  list.className = 'completions';
  list.id = field.id + '-completions';
  list.setAttribute('role', 'listbox');
  list.setAttribute('aria-label', 'Ways to go on');
  list.hidden = true;
  const told = document.createElement('p');
  told.className = 'unseen';
  told.setAttribute('role', 'status');
  box.append(list, told);
  field.setAttribute('aria-autocomplete', 'list');
  field.setAttribute('aria-controls', list.id);

  let at = -1, timer = 0, asked = 0;

  function close() {
    list.hidden = true;
    at = -1;
    field.removeAttribute('aria-activedescendant');
  }

  function mark(i) {
    const items = list.children;
    if (at >= 0 && items[at]) items[at].setAttribute('aria-selected', 'false');
    at = i;
    if (at < 0) {
      field.removeAttribute('aria-activedescendant');
      return;
    }
    items[at].setAttribute('aria-selected', 'true');
    items[at].scrollIntoView({ block: 'nearest' });
    field.setAttribute('aria-activedescendant', items[at].id);
  }

  function take(i) {
    field.value = list.children[i].dataset.value;
    close();
    field.focus();
    look();
  }

  function show(choices) {
    list.replaceChildren();
    close();
    const typed = field.value;
    choices.filter((c) => c.value !== typed).slice(0, 8).forEach((c, i) => {
      const li = document.createElement('li');
      li.id = list.id + '-' + i;
      li.setAttribute('role', 'option');
      li.setAttribute('aria-selected', 'false');
      li.dataset.value = c.value;
      if (c.value.startsWith(typed)) {
        const old = document.createElement('span');
        old.className = 'typed';
        old.textContent = typed;
        li.append(old, c.value.slice(typed.length));
      } else {
        li.textContent = c.label;
      }
      li.addEventListener('mousedown', (e) => { e.preventDefault(); take(i); });
      list.append(li);
    });
    const n = list.children.length;
    list.hidden = n === 0;
    told.textContent = n === 0 ? '' : n + ' ways to go on; the down arrow walks them';
  }

  async function look() {
    const mine = ++asked;
    if (field.value.trim() === '') {
      show([]);
      return;
    }
    const query = new URLSearchParams({ option: field.dataset.complete, typed: field.value });
    try {
      const r = await fetch('/complete?' + query);
      const choices = r.ok ? await r.json() : [];
      if (mine === asked && document.activeElement === field) show(choices);
    } catch {
      show([]); // the program is gone, or the page is being left
    }
  }

  field.addEventListener('input', () => {
    clearTimeout(timer);
    timer = setTimeout(look, 120);
  });
  field.addEventListener('blur', close);
  field.addEventListener('keydown', (e) => {
    const n = list.hidden ? 0 : list.children.length;
    if (e.key === 'ArrowDown' && n > 0) {
      mark((at + 1) % n);
    } else if (e.key === 'ArrowUp' && n > 0) {
      mark(at <= 0 ? n - 1 : at - 1);
    } else if (e.key === 'Escape' && n > 0) {
      close();
    } else if (e.key === 'Enter' && at >= 0) {
      take(at);
    } else if (e.key === 'Enter' && !e.shiftKey && !e.isComposing && field.value.trim() !== '') {
      clearTimeout(timer);
      asked++;
      field.form.requestSubmit();
    } else {
      return;
    }
    e.preventDefault();
  });
}

document.querySelectorAll('[data-complete]').forEach(complete);

document.querySelectorAll('[data-try]').forEach((b) => b.addEventListener('click', () => {
  const field = document.getElementById('words');
  field.value = b.dataset.try;
  field.focus();
}));

document.querySelectorAll('[data-copy]').forEach((b) => {
  b.hidden = false;
  b.addEventListener('click', async () => {
    const field = document.getElementById(b.dataset.copy);
    field.select();
    try {
      await navigator.clipboard.writeText(field.value);
      document.querySelector('[data-copied]').textContent = 'copied';
    } catch {
      document.querySelector('[data-copied]').textContent = 'press Ctrl-C to copy';
    }
  });
});

// A picture that is wider than the screen begins at its middle, the net.
document.querySelectorAll('.picture').forEach((p) => { p.scrollLeft = (p.scrollWidth - p.clientWidth) / 2; });

// After a question or a press the reader begins at the answer.
const arrive = document.querySelector('[data-arrive]');
if (arrive && document.activeElement === document.body) arrive.focus({ preventScroll: true });
