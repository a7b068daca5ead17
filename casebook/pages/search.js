// Searches the notes that stand in the page as data. Nothing is fetched.
'use strict';

const notes = JSON.parse(document.getElementById('notes').textContent);
const field = document.getElementById('q');
const found = document.getElementById('found');
const told = document.getElementById('told');
const most = 50;

const cut = (s) => s.toLowerCase().split(/[^\p{L}\p{N}.'-]+/u).filter((w) => w !== '');
for (const n of notes) {
  n.words = { title: cut(n.title + ' ' + n.id), rules: (n.rules || []).map((r) => r.toLowerCase()), topics: cut((n.topics || []).join(' ')), text: cut(n.text + ' ' + (n.ruling || '') + ' ' + n.for) };
}

// score says how well a note answers one word; 0: not at all.
function score(n, word) {
  const begins = (ws) => ws.some((w) => w.startsWith(word));
  let s = 0;
  if (n.words.rules.some((r) => r === word || r.startsWith(word + '.') || r.startsWith(word + '-'))) s += 8;
  if (begins(n.words.title)) s += 4;
  if (begins(n.words.topics)) s += 3;
  if (begins(n.words.text)) s += 1;
  return s;
}

function search() {
  const words = cut(field.value);
  found.replaceChildren();
  if (words.length === 0) {
    told.textContent = '';
    return;
  }
  const hits = [];
  notes.forEach((n, i) => {
    const all = words.map((w) => score(n, w));
    const met = all.filter((s) => s > 0).length;
    if (met > 0) hits.push({ n, i, rank: met * 100 + all.reduce((a, b) => a + b, 0) - (n.mark ? 50 : 0) });
  });
  hits.sort((a, b) => b.rank - a.rank || a.i - b.i);
  const whole = hits.filter((h) => words.every((w) => score(h.n, w) > 0));
  const shown = (whole.length > 0 ? whole : hits);
  for (const { n } of shown.slice(0, most)) {
    const li = document.createElement('li');
    li.className = 'card';
    const a = document.createElement('a');
    a.href = n.id + '.html';
    a.textContent = n.id + ' ' + n.title;
    const about = document.createElement('span');
    about.className = 'about';
    about.textContent = [n.mark, n.ruling, n.for].filter(Boolean).join(' · ');
    li.append(a, about);
    found.append(li);
  }
  const n = shown.length;
  told.textContent = n === 0 ? 'No note was found. Try other words, or a rule number.' : n === 1 ? '1 note' : n > most ? n + ' notes; the first ' + most + ' are shown' : n + ' notes';
}

let timer = 0;
field.addEventListener('input', () => {
  clearTimeout(timer);
  timer = setTimeout(search, 100);
});
field.form.addEventListener('submit', (e) => {
  e.preventDefault();
  search();
});
field.value = new URLSearchParams(location.search).get('q') || '';
search();
