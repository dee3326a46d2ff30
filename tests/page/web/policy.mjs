// Whoever got a script into the page would send nothing from it, and get nothing in.
import { createServer } from 'node:http';
import { path, wait } from '../browser.mjs';
import { exampleText } from '../suite.mjs';

/** Each tries to reach `there`, or to run what came as text: `window.got` is what was run. */
async function attack(there) {
  window.got = [];
  window.refused = [];
  document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
    window.refused.push(`${effectiveDirective} ${blockedURI.replace(/\?.*$/, '')}`));
  const put = (html) => {
    const place = document.body.appendChild(document.createElement('div'));
    place.innerHTML = html;
    return place;
  };
  const add = (name, given, where = document.body) => where.appendChild(Object.assign(document.createElement(name), given));
  const attacks = {
    fetch: () => fetch(`${there}/fetch`, { mode: 'no-cors' }),
    xhr: () => new Promise((done) => {
      const request = new XMLHttpRequest();
      request.onloadend = done;
      request.open('GET', `${there}/xhr`);
      request.send();
    }),
    socket: () => new Promise((done) => {
      const socket = new WebSocket(`${there.replace('http', 'ws')}/socket`);
      socket.onopen = socket.onerror = done;
    }),
    events: () => new Promise((done) => (new EventSource(`${there}/events`).onerror = done)),
    beacon: () => navigator.sendBeacon(`${there}/beacon`, 'x'),
    fetchOfAWorker: () => new Promise((done) => {
      const script = `fetch('${there}/worker', { mode: 'no-cors' }).catch(() => {}).then(() => postMessage(0))`;
      new Worker(URL.createObjectURL(new Blob([script]))).onmessage = done;
    }),
    markup: () => put('<img src="data:," onerror="got.push(\'handler\')"><script>got.push("markup")</scr' + 'ipt>'),
    script: () => add('script', { textContent: 'got.push("script")' }),
    scriptFromElsewhere: () => add('script', { src: `${there}/script.js` }),
    address: () => add('a', { href: 'javascript:got.push("address")', textContent: 'x' }).click(),
    eval: () => (0, eval)('got.push("eval")'),
    function: () => new Function('got.push("function")')(),
    image: () => put(`<img src="${there}/image.png">`),
    frame: () => put(`<iframe src="${there}/frame"></iframe>`),
    object: () => put(`<object data="${there}/object"></object>`),
    styleFromElsewhere: () => add('link', { rel: 'stylesheet', href: `${there}/style.css` }, document.head),
    style: () => put(`<style>body { background: url(${there}/style.png) !important }</style>`),
    font: () => new FontFace('x', `url(${there}/font.woff2)`).load(),
    form: () => {
      add('iframe', { name: 'elsewhere' });
      put(`<form action="${there}/form" target="elsewhere"></form>`).firstChild.submit();
    },
  };
  for (const one of Object.values(attacks)) {
    try {
      await one();
    } catch {
      // It was refused at once.
    }
  }
  return Object.keys(attacks).length;
}

/** What the browser says of each. A form's target is a blank frame, which stays blank. */
const kRefused = ['connect-src /fetch', 'connect-src /xhr', 'connect-src /socket', 'connect-src /events', 'connect-src /beacon',
  'script-src-attr inline', 'script-src-elem inline', 'script-src-elem /script.js', 'script-src eval', 'img-src /image.png',
  'frame-src', 'object-src', 'style-src-elem /style.css', 'style-src-elem inline', 'font-src /font.woff2',
  'form-action /form'];

export async function policy(browser) {
  const asked = [];
  const server = createServer((request, response) => {
    asked.push(request.url);
    response.end();
  });
  server.on('upgrade', (request, socket) => {
    asked.push(request.url);
    socket.destroy();
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  const there = `http://127.0.0.1:${server.address().port}`;
  await path(browser, 'the policy attacked', {}, async (person) => {
    await person.openJob('tin-heron.toml', exampleText());
    const count = await person.page.evaluate(attack, there);
    await wait(500); // what was let through would be on its way
    const { got, refused } = await person.page.evaluate(() => ({ got: window.got, refused: window.refused }));
    const told = refused.map((one) => one.replace(/(http|ws):\/\/127\.0\.0\.1:\d+/, '').trim());
    const missing = kRefused.filter((one) => !told.includes(one));
    person.check(`${count} attacks: each refused by the policy`, missing.length === 0, `not refused: ${missing.join(', ')}\nrefused: ${told.join(', ')}`);
    person.equal('nothing was asked for elsewhere', asked.join(' '), '');
    person.equal('nothing that came as text was run', got.join(' '), '');
    // What the console says of them, and no more.
    const other = person.trouble.filter((one) => !/Content Security Policy|violates the following/.test(one));
    person.equal('the console tells of nothing else', other.join('\n'), '');
    person.trouble.length = 0;
    person.asked = person.asked.filter((address) => !address.startsWith(there));
    await person.fill('Width', '27 in', await person.region('Frame'));
    await person.untilSaid('front 27 in', '.pane.plan');
    person.check('and the page works on', true);
  });
  server.close();
}
