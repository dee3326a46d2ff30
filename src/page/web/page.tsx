// Puts the page together.
import * as facts from 'facts';
import { render } from 'preact';
import { startAnother, startCore } from './core';
import { litKeys } from './fields/lit';
import { Maker } from './print/make';
import { scripting } from './scripting';
import { App } from './shell/app';
import { Incoming } from './shell/incoming';
import { keepKeyboard } from './shell/keyboard';
import { listenToKeys } from './shell/keys';
import { askBeforeLeaving, followTitle } from './shell/leaving';
import { followWidth } from './shell/narrow';
import { workBehind } from './state/back';
import { Desk } from './state/desk';
import { GivenFiles } from './state/files';
import { makeBench } from './state/make_bench';

const files = new GivenFiles();
const core = files.serve(startCore());
const start = () => startAnother(core);
const bench = makeBench(core, files);
const back = workBehind(bench, files.serve(start()));
const maker = new Maker(start, files);
const desk = new Desk(bench, files);
const incoming = new Incoming(bench, desk, files);
const nonce = document.querySelector('style')?.nonce ?? '';

followWidth();
window.swathe = scripting(start);
listenToKeys(bench, desk, incoming);
keepKeyboard();
followTitle(bench, desk);
askBeforeLeaving(bench, desk);
render(
  <App core={core} start={start} bench={bench} back={back} maker={maker} desk={desk} files={files}
    lit={litKeys(bench)} incoming={incoming} words={facts.words} choices={facts.choices}
    kinds={facts.kinds} nonce={nonce} />,
  document.getElementById('page')!);
void incoming.link();
window.addEventListener('hashchange', () => void incoming.link());
