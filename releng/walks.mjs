// Walks bench pages in headless Chromium to each of their conclusions, once by touch on a screen of 390 x 844 and once by the keyboard
// alone on one of 1280 x 800: every note is read, every wait cut short, every result pressed as it stands on the page. Prints how long a
// press takes until the next step is drawn.
//   node walks.mjs CHROMIUM PAGE…     with puppeteer-core where node finds it
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import path from 'node:path';

const require = createRequire(path.join(process.cwd(), 'package.json'));
const puppeteer = require('puppeteer-core');
const [chromium, ...pages] = process.argv.slice(2);
const MOST_PRESSES = 400;
const browser = await puppeteer.launch({ executablePath: chromium, args: ['--no-sandbox', '--disable-gpu'] });

/** In the page: the shortest list of results to each conclusion, found by the page's own interpreter. */
function ways() {
  const walk = FaultwrightWalk;
  const tree = JSON.parse(document.getElementById('tree').textContent);
  const found = {};
  search(state => '');
  // what only a repeat that has been taken too often leads to
  if (tree.steps.some(step => step.kind === 'conclude' && !found[step.id])) { search(state => JSON.stringify(state.counts)); }
  return { wanted: tree.steps.filter(step => step.kind === 'conclude').map(step => step.id), found };

  function search(counted) {
    const met = new Set();
    let open = [{ state: walk.start(tree), moves: [] }];
    while (open.length > 0) {
      const next = [];
      for (const { state, moves } of open) {
        if (walk.isEnd(state)) {
          if (!state.lost && !found[state.step.id]) { found[state.step.id] = { title: state.step.title || state.step.id, moves }; }
          continue;
        }
        const key = state.path.join('/') + '|' + state.step.id + '|' + counted(state);
        if (met.has(key) || met.size > 20000) { continue; }
        met.add(key);
        if (walk.canEnter(state)) {
          next.push({ state: walk.enter(state), moves: moves.concat([{ enter: true }]) });
        } else {
          state.step.outcomes.forEach((outcome, i) => next.push({ state: walk.take(state, outcome.key, undefined), moves: moves.concat([{ result: i }]) }));
        }
      }
      open = next;
    }
  }
}

/** In the page: marks what is to be pressed next, and says whether a result was chosen by it. */
function choose(move) {
  // two presses follow one another as slowly as a hand would
  const later = Date.now() + 1000;
  Date.now = () => later;
  document.querySelectorAll('[data-next]').forEach(one => one.removeAttribute('data-next'));
  const usable = (where, which) => [...document.querySelectorAll(where)].filter(one => !one.disabled && which(one.textContent));
  const due = usable('.due button', words => words === 'I have read this' || words === 'I have made it so');
  const wait = usable('.timer button', words => words === 'I have waited long enough');
  let press = due[0] || wait[0];
  let done = false;
  if (!press && document.body.textContent.includes('Nothing leaves this device') && usable('button', words => words === 'Begin')[0]) {
    press = usable('button', words => words === 'Begin')[0];
  } else if (!press && move.enter) {
    // where nothing is to be read or set first the page begins a routine by itself
    press = usable('#work button', words => words === 'Begin the routine')[0];
    if (!press) { return { done: true }; }
    done = true;
  } else if (!press) {
    const folded = document.querySelector('#work details.without:not([open]) summary');
    press = folded || usable('#work button.result', () => true)[move.result];
    done = !folded;
  }
  if (!press) { return { missing: document.querySelector('#app').innerText.replace(/\s+/g, ' ').slice(0, 300) }; }
  press.setAttribute('data-next', 'here');
  press.scrollIntoView({ block: 'center' });
  return { done, press: true };
}

const hands = {
  touch: {
    view: { width: 390, height: 844, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    async press(page) {
      const box = await (await page.$('[data-next]')).boundingBox();
      if (box.height < 44) { throw new Error(`a target of ${Math.round(box.height)} pixels is too small to touch`); }
      await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    },
  },
  keyboard: {
    view: { width: 1280, height: 800 },
    async press(page) {
      for (let i = 0; i < 200; i++) {
        if (await page.evaluate(() => document.activeElement !== null && document.activeElement.hasAttribute('data-next'))) {
          await page.keyboard.press('Enter');
          return;
        }
        await page.keyboard.press('Tab');
      }
      throw new Error('the keyboard does not come to what is to be pressed');
    },
  },
};

async function walk(page, way, hand) {
  let presses = 0;
  for (const move of way.moves) {
    let done = false;
    while (!done) {
      const chosen = await page.evaluate(choose, move);
      if (chosen.missing !== undefined) { throw new Error(`nothing to press at: ${chosen.missing}`); }
      if (chosen.press) { await hand.press(page); }
      done = chosen.done === true;
      if (++presses > MOST_PRESSES) { throw new Error('the walk does not end'); }
    }
  }
  const words = await page.evaluate(() => document.querySelector('#app').innerText);
  if (!words.includes(way.title)) { throw new Error(`not at "${way.title}" but at: ${words.replace(/\s+/g, ' ').slice(0, 300)}`); }
  return presses;
}

function part(times, share) {
  return times.length === 0 ? '-' : times.slice().sort((a, b) => a - b)[Math.floor((times.length - 1) * share)].toFixed(1);
}

let wrong = 0;
for (const file of pages) {
  for (const [name, hand] of Object.entries(hands)) {
    const page = await browser.newPage();
    await page.setViewport(hand.view);
    await page.evaluateOnNewDocument(() => {
      // what is pressed is answered before the press has been told to the window
      let from = 0;
      window.drawn = [];
      window.addEventListener('click', () => { from = performance.now(); }, true);
      window.addEventListener('click', () => { window.drawn.push(performance.now() - from); });
    });
    await page.goto(pathToFileURL(file).href);
    const { wanted, found } = await page.evaluate(ways);
    let presses = 0;
    let reached = 0;
    const drawn = [];
    for (const id of wanted) {
      try {
        if (!found[id]) { throw new Error('no results lead there'); }
        await page.evaluate(() => localStorage.clear());
        await page.reload();
        presses += await walk(page, found[id], hand);
        drawn.push(...await page.evaluate(() => window.drawn));
        reached++;
      } catch (error) {
        wrong++;
        console.log(`  ${path.basename(file)}, "${id}" by ${name}: ${error.message}`);
      }
    }
    console.log(`${path.basename(file)}, by ${name}: ${reached} of ${wanted.length} conclusions, ${presses} presses, answered in ${part(drawn, 0.5)} ms in the middle, ${part(drawn, 0.95)} ms at the 95th percentile`);
    await page.close();
  }
}
await browser.close();
process.exit(wrong > 0 ? 1 : 0);
