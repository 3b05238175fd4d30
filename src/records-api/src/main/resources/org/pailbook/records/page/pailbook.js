/* The one script of the pages. Without it the same pages work as plain forms.
   A file at work: shows how far it is.
   Weigh day: checks what is typed, keeps it on the device until the service has it, saves each row when it is left. */
'use strict';
(() => {
  const job = document.getElementById('job');
  if (!job) return;
  const told = document.getElementById('job-told');
  const look = async () => {
    try {
      const answer = await fetch(job.dataset.progress, { credentials: 'same-origin', cache: 'no-store', redirect: 'manual' });
      if (answer.ok) {
        const now = await answer.json();
        if (!now.running) { location.reload(); return; }
        told.textContent = told.textContent.replace(/[0-9]+/, now.done);
        job.value = now.done;
      }
    } catch (noConnection) { /* asked again below */ }
    setTimeout(look, 700);
  };
  look();
})();
(() => {
  const sheet = document.getElementById('sheet');
  if (!sheet) return;

  const words = {};
  document.querySelectorAll('#words [data-word]').forEach(one => { words[one.dataset.word] = one.textContent; });
  const word = (key, value) => words['script.' + key].replace('%s', value);
  const herd = sheet.dataset.herd, day = sheet.dataset.day, unit = sheet.dataset.unit;
  const milkings = sheet.elements.milkings.value;
  const rows = [...sheet.querySelectorAll('[data-animal]')];
  const fields = [...sheet.querySelectorAll('input[data-cell]')];
  const cellsOf = row => [...row.querySelectorAll('input[data-cell]')];
  const rowOf = new Map(rows.map(row => [row.dataset.animal, row]));
  const state = document.getElementById('sheet-state');
  const find = document.getElementById('find');
  const RETRY_SECONDS = 5, TIMEOUT_SECONDS = 20, ROWS_AT_ONCE = 50, MOST_NAMED = 8;

  /* ---- what is not yet saved: one entry of the browser's storage for each cow and day, so that two tabs do not write over each other */

  const PREFIX = 'pailbook/' + herd + '/';
  const keyOf = (date, animal) => PREFIX + date + '/' + animal;
  let keeps = true;
  const memory = new Map();
  const keep = (key, entry) => {
    memory.set(key, entry);
    try { localStorage.setItem(key, JSON.stringify(entry)); } catch (full) { keeps = false; }
  };
  const kept = key => {
    try {
      const text = localStorage.getItem(key);
      if (text) return JSON.parse(text);
    } catch (closed) { keeps = false; }
    return keeps ? undefined : memory.get(key);
  };
  const forget = key => {
    memory.delete(key);
    try { localStorage.removeItem(key); } catch (closed) { keeps = false; }
  };
  const waiting = () => {
    const keys = new Set(memory.keys());
    try {
      for (let i = 0; i < localStorage.length; i++) {
        const key = localStorage.key(i);
        if (key.startsWith(PREFIX)) keys.add(key);
      }
    } catch (closed) { keeps = false; }
    return [...keys].filter(key => kept(key)).sort();
  };

  /* ---- what is typed */

  const plain = text => text.trim().replace(',', '.');
  const number = text => /^([0-9]{1,6}([.][0-9]{0,6})?|[.][0-9]{1,6})$/.test(plain(text)) ? Number(plain(text)) : NaN;

  const tell = (row, parts) => {
    const told = row.querySelector('.row-told');
    // that a weight of the whole day is recorded stays told, whatever is typed beside it
    told.replaceChildren(...parts, ...told.querySelectorAll('[data-whole]'));
  };
  const span = (text, kind) => {
    const one = document.createElement('span');
    one.textContent = text + ' ';
    if (kind) one.className = kind;
    return one;
  };
  const button = (text, act) => {
    const one = document.createElement('button');
    one.type = 'button';
    one.textContent = text;
    one.addEventListener('click', act);
    return one;
  };

  /** What is wrong with a row as it stands, and what is odd; told before anything is saved. */
  const judge = row => {
    const parts = [];
    let sum = 0, isWhole = true, isWrong = false;
    for (const field of cellsOf(row)) {
      const text = field.value.trim();
      const value = number(text);
      let fault = '';
      if (text !== '' && isNaN(value)) fault = word('notANumber');
      else if (field.dataset.most && value > Number(field.dataset.most)) fault = word('tooMuch', field.dataset.most);
      if (fault) {
        field.setAttribute('aria-invalid', 'true');
        isWrong = true;
        parts.push(span(field.parentNode.textContent.trim() + ': ' + fault, 'wrong'));
      } else {
        field.removeAttribute('aria-invalid');
      }
      if (field.dataset.milk) {
        if (text === '') isWhole = false;
        else sum += value;
      }
    }
    const low = row.dataset.low, high = row.dataset.high;
    if (!isWrong && high && (sum > Number(high) || (isWhole && sum < Number(low)))) {
      const expected = row.querySelector('.expected').textContent;
      parts.push(span(words['script.odd'].replace('%s', Math.round(sum * 10) / 10).replace('%u', unit)
        .replace('%e', expected.charAt(0).toUpperCase() + expected.slice(1)), 'odd'));
    }
    return parts;
  };

  /** Keeps what is typed on the device, at once, field by field. */
  const note = row => {
    const key = keyOf(day, row.dataset.animal);
    const before = kept(key);
    const cells = {};
    for (const field of cellsOf(row)) {
      const waits = before && before.cells[field.dataset.cell];
      const isAsSaved = plain(field.value) === plain(field.dataset.shown);
      if (!isAsSaved) cells[field.dataset.cell] = { typed: field.value.trim(), seen: waits ? waits.seen : field.dataset.seen };
    }
    if (before) {
      // fields of this cow that this sheet does not show wait on
      for (const cell of Object.keys(before.cells)) {
        if (!row.querySelector('[data-cell="' + cell + '"]')) cells[cell] = before.cells[cell];
      }
    }
    if (Object.keys(cells).length) {
      keep(key, { tag: row.dataset.tag, unit, milkings, cells });
    } else {
      forget(key);
    }
    mark(row);
  };

  const mark = row => row.classList.toggle('waiting', Boolean(kept(keyOf(day, row.dataset.animal))));

  /* ---- sending */

  let isSending = false, timer = 0, trouble = '';

  const namesOf = keys => {
    const here = keys.filter(key => key.startsWith(keyOf(day, '')) && rowOf.has(key.split('/').pop()));
    const names = here.slice(0, MOST_NAMED).map(key => kept(key).tag);
    if (here.length > MOST_NAMED) names.push('+' + (here.length - MOST_NAMED));
    const others = keys.length - here.length;
    if (others) names.push(word('otherRows', others));
    return names.join(', ');
  };

  const show = () => {
    const keys = waiting();
    let text = '';
    if (!keys.length) text = word('allSaved');
    else if (trouble) text = word(trouble, namesOf(keys));
    else text = (isSending ? word('saving') + ' ' : '') + word('notSaved', namesOf(keys));
    let weighed = 0, sum = 0;
    for (const row of rows) {
      const milk = cellsOf(row).filter(field => field.dataset.milk).map(field => number(field.value)).filter(value => value >= 0);
      if (milk.length) weighed++;
      sum += milk.reduce((one, other) => one + other, 0);
    }
    text += ' ' + words['script.sum'].replace('%n', weighed).replace('%c', rows.length)
      .replace('%s', Math.round(sum * 10) / 10).replace('%u', unit);
    if (!keeps) text += ' ' + word('notKept');
    if (state.firstChild && state.firstChild.data === text && (trouble === 'signIn') === Boolean(state.querySelector('a'))) return;
    state.replaceChildren(document.createTextNode(text));
    if (keys.length && trouble === 'signIn') {
      const link = document.createElement('a');
      link.href = '/pages/sign-in';
      link.target = '_blank';
      link.rel = 'noopener';
      link.textContent = word('signInLink');
      state.append(' ', link);
    }
  };

  /** Rows that may go now: not the one somebody is typing in, none that the service refused as it stands. */
  const ready = () => {
    const typing = document.activeElement && document.activeElement.closest ? document.activeElement.closest('[data-animal]') : null;
    return waiting().filter(key => {
      const entry = kept(key);
      const row = key.startsWith(keyOf(day, '')) ? rowOf.get(key.split('/').pop()) : null;
      if (row && row === typing && document.hasFocus()) return false;
      return !entry.refused && !(row && row.querySelector('[aria-invalid]'));
    });
  };

  const later = seconds => {
    clearTimeout(timer);
    timer = setTimeout(send, seconds * 1000);
  };

  const send = async () => {
    if (isSending) return;
    const all = ready();
    if (!all.length) { show(); return; }
    // one request is for one day, one unit and one number of milkings
    const like = key => { const entry = kept(key); return key.slice(PREFIX.length).split('/')[0] + entry.unit + entry.milkings; };
    const keys = all.filter(key => like(key) === like(all[0])).slice(0, ROWS_AT_ONCE);
    const first = kept(keys[0]);
    const entries = keys.map(key => [key, kept(key)]);
    const date = keys[0].slice(PREFIX.length).split('/')[0];
    isSending = true;
    show();
    const given = new AbortController();
    const limit = setTimeout(() => given.abort(), TIMEOUT_SECONDS * 1000);
    let answer = null, wait = 0;
    try {
      const response = await fetch('/pages/herds/' + herd + '/weigh-day/rows', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({
          date, unit: first.unit, milkings: first.milkings,
          rows: entries.map(([key, entry]) => ({ animal: key.split('/').pop(), cells: entry.cells })),
        }),
        redirect: 'manual', credentials: 'same-origin', cache: 'no-store', signal: given.signal,
      });
      if (response.ok) {
        answer = await response.json();
        trouble = '';
      } else if (response.type === 'opaqueredirect' || [401, 403, 404].includes(response.status)) {
        trouble = 'signIn';
        wait = RETRY_SECONDS;
      } else {
        trouble = 'busy';
        wait = Number(response.headers.get('Retry-After')) || RETRY_SECONDS;
      }
    } catch (noConnection) {
      trouble = 'offline';
      wait = RETRY_SECONDS;
    } finally {
      clearTimeout(limit);
      isSending = false;
    }
    if (answer) entries.forEach(([key, entry]) => settle(key, entry, answer.rows[key.split('/').pop()] || {}));
    show();
    if (wait) later(wait);
    else if (answer && ready().length) later(0);
  };

  /** What the service said of a row; what was typed on meanwhile waits on. */
  const settle = (key, sent, told) => {
    const now = kept(key);
    const row = key.startsWith(keyOf(day, '')) ? rowOf.get(key.split('/').pop()) : null;
    const parts = [];
    let isRefused = false;
    for (const cell of Object.keys(told)) {
      const one = told[cell];
      const field = row && row.querySelector('[data-cell="' + cell + '"]');
      const waits = now && now.cells[cell];
      const isSame = waits && sent.cells[cell] && waits.typed === sent.cells[cell].typed;
      if (one.state === 'saved') {
        if (field) { field.dataset.seen = one.there; field.dataset.shown = isSame ? field.value : one.shown; }
        if (isSame) delete now.cells[cell];
        else if (waits) waits.seen = one.there;
        if (one.message) parts.push(span((field ? field.parentNode.textContent.trim() + ': ' : '') + one.message, 'odd'));
      } else if (one.state === 'changed_meanwhile') {
        isRefused = true;
        if (field) parts.push(...choice(row, field, key, cell, one));
      } else {
        isRefused = true;
        if (field) field.setAttribute('aria-invalid', 'true');
        parts.push(span((field ? field.parentNode.textContent.trim() + ': ' : '') + one.message, 'wrong'));
      }
    }
    if (now) {
      now.refused = isRefused;
      if (Object.keys(now.cells).length) keep(key, now);
      else forget(key);
    }
    if (row) {
      mark(row);
      const odd = isRefused ? [] : judge(row);
      if (parts.length || odd.length) tell(row, [...parts, ...odd]);
      else tell(row, [span(word('rowSaved'))]);
    }
  };

  /** Somebody else wrote there: both values are shown, and a person decides. */
  const choice = (row, field, key, cell, one) => {
    const there = one.shown === '' ? word('emptyField') : one.shown;
    const mine = field.value.trim() === '' ? word('emptyField') : field.value.trim();
    return [
      span(field.parentNode.textContent.trim() + ': ' + word('there', there), 'wrong'),
      button(word('keepTheirs', there), () => {
        field.value = one.shown;
        field.dataset.seen = one.there;
        field.dataset.shown = one.shown;
        decided(row, key, cell, null);
      }),
      button(word('takeMine', mine), () => {
        field.dataset.seen = one.there;
        field.dataset.shown = one.shown;
        decided(row, key, cell, { typed: field.value.trim(), seen: one.there });
      }),
    ];
  };

  const decided = (row, key, cell, entry) => {
    const now = kept(key) || { tag: row.dataset.tag, unit, milkings, cells: {} };
    delete now.refused;
    if (entry) now.cells[cell] = entry;
    else delete now.cells[cell];
    if (Object.keys(now.cells).length) keep(key, now);
    else forget(key);
    tell(row, judge(row));
    mark(row);
    cellsOf(row)[0].focus();
    cellsOf(row)[0].blur();
    send();
  };

  /* ---- events */

  const go = (from, step) => {
    const to = fields[fields.indexOf(from) + step];
    if (to) { to.focus(); to.select(); }
    else if (step > 0) document.getElementById('save').focus();
  };

  const goRow = (from, step) => {
    const row = rows[rows.indexOf(from.closest('[data-animal]')) + step];
    const to = row && row.querySelector('[data-cell="' + from.dataset.cell + '"]');
    if (to) { to.focus(); to.select(); }
  };

  sheet.addEventListener('input', event => {
    const row = event.target.closest('[data-animal]');
    const entry = kept(keyOf(day, row.dataset.animal));
    if (entry && entry.refused) keep(keyOf(day, row.dataset.animal), { ...entry, refused: false });
    note(row);
    tell(row, judge(row));
    show();
  });
  sheet.addEventListener('keydown', event => {
    if (!event.target.dataset.cell) return;
    if (event.key === 'Enter') go(event.target, event.shiftKey ? -1 : 1);
    else if (event.key === 'ArrowDown') goRow(event.target, 1);
    else if (event.key === 'ArrowUp') goRow(event.target, -1);
    else return;
    event.preventDefault();
  });
  sheet.addEventListener('focusout', event => {
    const row = event.target.closest('[data-animal]');
    if (row && !row.contains(event.relatedTarget)) later(0);
  });
  sheet.addEventListener('submit', event => {
    event.preventDefault();
    const wrong = sheet.querySelector('[aria-invalid]');
    if (wrong) wrong.focus();
    later(0);
  });
  document.getElementById('sheet-find').addEventListener('submit', event => {
    event.preventDefault();
    const tag = find.value.trim().toLowerCase();
    const row = rows.find(one => one.dataset.tag.toLowerCase() === tag) || rows.find(one => one.dataset.tag.toLowerCase().endsWith(tag));
    document.getElementById('find-told').textContent = tag && row ? '' : word('noSuchTag');
    if (tag && row) {
      find.value = '';
      cellsOf(row)[0].focus();
      cellsOf(row)[0].select();
    }
  });
  addEventListener('online', () => later(0));
  addEventListener('focus', () => later(0));
  document.addEventListener('visibilitychange', () => later(0));

  /* ---- begin: what an earlier page could not save is put back into its fields, and sent */

  for (const field of fields) {
    // after a plain form was refused the field holds what was typed, not what is recorded
    field.dataset.shown = field.getAttribute('aria-invalid') ? '' : field.value;
  }
  for (const row of rows) {
    const note = row.querySelector('.row-told .odd');
    if (note && cellsOf(row).every(field => field.value === '')) note.dataset.whole = 'yes';
    const entry = kept(keyOf(day, row.dataset.animal));
    if (!entry || entry.unit !== unit) continue;
    delete entry.refused;
    keep(keyOf(day, row.dataset.animal), entry);
    for (const field of cellsOf(row)) {
      const waits = entry.cells[field.dataset.cell];
      if (waits) field.value = waits.typed;
    }
    const odd = judge(row);
    tell(row, odd.length ? odd : [span(word('rowKept'))]);
    mark(row);
  }
  document.getElementById('sheet-tools').hidden = false;
  later(0);
  show();
})();
