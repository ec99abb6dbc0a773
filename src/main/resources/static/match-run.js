// Redraws the page of a search whenever the search has something to tell. Where events do not come through, the page asks
// every two seconds by itself; without script the browser loads it again.
(function () {
  'use strict';
  var run = document.getElementById('run');
  var address = run && run.getAttribute('data-events');
  if (!address || !window.EventSource || !window.htmx) {
    return;
  }
  var source = new EventSource(address);
  function redraw() {
    var now = document.getElementById('run');
    if (now) {
      window.htmx.trigger(now, 'told');
    }
  }
  source.addEventListener('progress', redraw);
  source.addEventListener('ended', function () {
    source.close();
    redraw();
  });
})();
