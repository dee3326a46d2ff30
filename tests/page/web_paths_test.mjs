// A person's paths through the page, in Chromium, and the most of them in Firefox: all that is used
// is found by its role and its name.
//
// SWATHE_PAGE_ONLY: a pattern for the names of paths, to try one; SWATHE_PAGE_BROWSER: one browser.
import { browse } from './browser.mjs';
import { done } from './suite.mjs';
import { beginning } from './web/beginning.mjs';
import { editing } from './web/editing.mjs';
import { keeping } from './web/keeping.mjs';
import { trouble } from './web/trouble.mjs';

const only = process.env.SWATHE_PAGE_BROWSER;
if (only !== 'Firefox')
  await browse('Chromium', async (browser) => {
    console.log(`-- ${await browser.version()}`);
    await beginning(browser);
    await editing(browser);
    await keeping(browser);
    await trouble(browser);
  });
if (only !== 'Chromium')
  await browse('Firefox', async (browser) => {
    console.log(`-- ${await browser.version()}`);
    await editing(browser);
  });
done();
