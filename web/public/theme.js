// Day or night before the first paint. A classic script on purpose: modules run after it.
(() => {
  let theme = null;
  try {
    theme = localStorage.getItem('snackstop.theme');
  } catch {
    // Storage may be closed to the page; then the device decides.
  }
  if (theme !== 'day' && theme !== 'night')
    theme = window.matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'day';
  document.documentElement.dataset.theme = theme;
})();
