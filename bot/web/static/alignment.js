// Moves the players of the court by pointer and by keys, and asks for the
// ruling after each move.
'use strict';

(() => {
  const board = document.querySelector('[data-board]');
  const form = document.querySelector('[data-rule]');
  const faults = board.querySelector('[data-faults]'); // under the players
  const crosses = board.querySelector('[data-crosses]'); // and above them
  const verdict = document.querySelector('[data-verdict]');
  const ruling = form.querySelector('[data-ruling]');
  const told = form.querySelector('[data-told]');
  const words = document.getElementById('words');
  const code = document.getElementById('code');
  const serving = document.getElementById('serving');
  const players = [...board.querySelectorAll('.player')];
  const at = new Map(); // player to { x, y } in centimetres, y from the net, upward negative
  let held = null; // the player that the next press puts somewhere

  form.querySelectorAll('[data-script]').forEach((e) => { e.hidden = false; });

  const near = (p) => p.classList.contains('near');
  const side = (p) => ((near(p) ? 'a' : 'b') === serving.value ? 'serving' : 'receiving');
  const metres = (cm) => String(cm / 100) + ' m';

  function name(p) {
    return (near(p) ? 'A ' : 'B ') + side(p) + ' ' + p.dataset.place + ', ' + p.dataset.called;
  }

  // where says in words where a player is, as the player sees it.
  function where(p) {
    const { x, y } = at.get(p);
    return metres(near(p) ? x : 900 - x) + ' from the left side line, ' + metres(near(p) ? y : -y) + ' from the net';
  }

  function label(p) { p.setAttribute('aria-label', name(p) + ': ' + where(p)); }

  // put moves a player to a place, no farther than the page lets one go.
  function put(p, x, y) {
    const within = (v, low, high) => Math.min(Math.max(Math.round(v / 5) * 5, low), high);
    x = within(x, -100, 1000);
    y = near(p) ? within(y, -30, 1060) : within(y, -1060, 30);
    at.set(p, { x, y });
    p.setAttribute('transform', `translate(${x} ${y})`);
    label(p);
  }

  let timer = 0, asked = 0;
  function changed(said) {
    clearTimeout(timer);
    timer = setTimeout(() => rule(said), 60);
  }

  async function rule(said) {
    const mine = ++asked;
    const body = new URLSearchParams({
      form: form.elements.form.value, code: code.value, serving: serving.value,
      at: players.map((p) => { const { x, y } = at.get(p); return p.id + ':' + x + ',' + (near(p) ? y : -y); }).join(' '),
    });
    try {
      const r = await fetch(form.dataset.rule, { method: 'POST', body });
      if (!r.ok) throw new Error(r.status);
      const got = await r.json();
      if (mine !== asked) return; // somebody moved on
      ruling.innerHTML = got.html;
      ruling.dataset.tone = verdict.dataset.tone = got.tone;
      verdict.textContent = got.headline;
      words.value = got.text;
      mark(got.pairs, got.off);
      told.textContent = (said ? said + '. ' : '') + got.told;
    } catch {
      if (mine === asked) told.textContent = verdict.textContent = ruling.textContent = 'No ruling: the program did not answer. Load the page again.';
    }
  }

  function shape(kind, attributes) {
    const s = document.createElementNS('http://www.w3.org/2000/svg', kind);
    for (const [k, v] of Object.entries(attributes)) s.setAttribute(k, v);
    return s;
  }

  // mark draws what is at fault: a line with a cross between two who overlap,
  // a ring around each.
  function mark(pairs, off) {
    const who = (id) => document.getElementById(id);
    faults.replaceChildren();
    crosses.replaceChildren();
    players.forEach((p) => p.classList.toggle('fault', off.includes(p.id)));
    pairs.forEach(([a, b]) => {
      who(a).classList.add('fault');
      who(b).classList.add('fault');
      const p = at.get(who(a)), q = at.get(who(b));
      faults.append(shape('line', { x1: p.x, y1: p.y, x2: q.x, y2: q.y }));
      let x = (p.x + q.x) / 2, y = (p.y + q.y) / 2;
      const d = Math.hypot(q.x - p.x, q.y - p.y);
      if (d < 170) { // beside them, where it would hide whom it is about
        x += d < 1 ? 90 : 100 * Math.abs(q.y - p.y) / d;
        y += d < 1 ? 0 : 100 * Math.abs(q.x - p.x) / d;
      }
      crosses.append(shape('circle', { cx: x, cy: y, r: 34 }), shape('path', { class: 'cross', d: `M${x - 22} ${y - 22}l44 44M${x - 22} ${y + 22}l44 -44` }));
    });
  }

  function hold(p) {
    if (held) held.setAttribute('aria-pressed', 'false');
    held = held === p ? null : p;
    if (held) held.setAttribute('aria-pressed', 'true');
  }

  // from is the place of a pointer on the court.
  function from(e) {
    const m = board.getScreenCTM().inverse();
    const q = new DOMPoint(e.clientX, e.clientY).matrixTransform(m);
    return { x: q.x, y: q.y };
  }

  players.forEach((p) => {
    const m = p.transform.baseVal.consolidate().matrix;
    at.set(p, { x: m.e, y: m.f });
    label(p);
    let grip = null, dragged = false;
    p.addEventListener('pointerdown', (e) => {
      if (e.button !== 0) return;
      const q = from(e);
      grip = { x: at.get(p).x - q.x, y: at.get(p).y - q.y, fromX: e.clientX, fromY: e.clientY };
      dragged = false;
      p.setPointerCapture(e.pointerId);
    });
    p.addEventListener('pointermove', (e) => {
      if (!grip) return;
      if (!dragged && Math.hypot(e.clientX - grip.fromX, e.clientY - grip.fromY) < 4) return;
      dragged = true;
      const q = from(e);
      put(p, q.x + grip.x, q.y + grip.y);
      changed('');
    });
    const end = () => {
      if (grip && dragged) changed(name(p) + ': ' + where(p));
      grip = null;
    };
    p.addEventListener('pointerup', end);
    p.addEventListener('pointercancel', end);
    p.addEventListener('click', (e) => {
      e.stopPropagation();
      if (!dragged) hold(p);
      dragged = false;
    });
    p.addEventListener('keydown', (e) => {
      const step = e.shiftKey ? 50 : 10;
      const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[e.key];
      if (e.key === 'Enter' || e.key === ' ') {
        hold(p);
      } else if (e.key === 'Escape' && held) {
        hold(held);
      } else if (by && !e.ctrlKey && !e.altKey && !e.metaKey) {
        put(p, at.get(p).x + by[0], at.get(p).y + by[1]);
        changed(name(p) + ': ' + where(p));
      } else {
        return;
      }
      e.preventDefault();
    });
  });

  board.addEventListener('click', (e) => {
    if (!held) return;
    const p = held, q = from(e);
    hold(p);
    put(p, q.x, q.y);
    p.focus();
    changed(name(p) + ': ' + where(p));
  });

  code.addEventListener('change', () => changed('Under ' + code.value));
  serving.addEventListener('change', () => {
    for (const id of ['a', 'b']) board.querySelector('[data-name=' + id + ']').textContent = id === serving.value ? 'serving' : 'receiving';
    players.forEach(label);
    changed('');
  });
  if (board.dataset.pairs) {
    const off = players.filter((p) => p.classList.contains('fault')).map((p) => p.id);
    mark(board.dataset.pairs.split(' ').map((p) => p.split('-')), off);
  }
})();
