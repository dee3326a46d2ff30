// A person's paths through the page, all in Chromium and some in Firefox: whatever is used is found by
// its role and its name.
//
// SWATHE_PAGE_LONG: all in Firefox, too.
// SWATHE_PAGE_ONLY: a pattern for the names of paths, to try one; SWATHE_PAGE_BROWSER: one browser.
import { browse, takeFew } from './browser.mjs';
import { done, kLong } from './suite.mjs';
import { beginning } from './web/beginning.mjs';
import { editing } from './web/editing.mjs';
import { enlarged } from './web/enlarged.mjs';
import { fields } from './web/fields.mjs';
import { keeping } from './web/keeping.mjs';
import { keyboard } from './web/keyboard.mjs';
import { looking } from './web/looking.mjs';
import { moving } from './web/moving.mjs';
import { ownFont } from './web/own_font.mjs';
import { policy } from './web/policy.mjs';
import { printing } from './web/printing.mjs';
import { sameTitles } from './web/same_titles.mjs';
import { seeingNoColors } from './web/seeing_no_colors.mjs';
import { trouble } from './web/trouble.mjs';
import { twoTabs } from './web/two_tabs.mjs';
import { walking } from './web/walking.mjs';

const kFew = /newcomer|first file|stranger|in its field|half a value|shared end|by keyboard|saved, closed|font/;

async function all(browser) {
  console.log(`-- ${await browser.version()}`);
  await beginning(browser);
  await editing(browser);
  await enlarged(browser);
  await fields(browser);
  await keeping(browser);
  await keyboard(browser);
  await sameTitles(browser);
  await twoTabs(browser);
  await printing(browser);
  await trouble(browser);
  await moving(browser);
  await walking(browser);
  await looking(browser);
  await seeingNoColors(browser);
  await ownFont(browser);
  await policy(browser);
}
const only = process.env.SWATHE_PAGE_BROWSER;
if (only !== 'Firefox') await browse('Chromium', all);
if (!kLong) takeFew(kFew);
if (only !== 'Chromium') await browse('Firefox', all);
done();
