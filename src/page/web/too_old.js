// In the words of old browsers: says so where one cannot do what the page needs.
(function () {
  'use strict';
  var wants = ['WebAssembly', 'Promise', 'ResizeObserver', 'structuredClone', 'HTMLDialogElement'];
  var old = !('noModule' in document.createElement('script'));
  for (var k = 0; k < wants.length; ++k) if (typeof window[wants[k]] === 'undefined') old = true;
  try {
    // A module of WebAssembly that uses its exceptions: (module (tag (type 0))).
    if (!old && !WebAssembly.validate(new Uint8Array(
      [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 13, 3, 1, 0, 0]))) old = true;
    // What the core is packed in: some unpack other ways, and not this one.
    new DecompressionStream('deflate-raw');
  } catch (error) {
    old = true;
  }
  if (!old) return;
  document.documentElement.className = 'too-old';
  document.getElementById('old').removeAttribute('hidden');
})();
