/** Start of the page. */
import './strict.ts';
import { render } from 'preact';
import { App } from './app.tsx';
import { startSending } from './outbox/outbox.ts';
import { refreshStatus } from './status.ts';
import './styles/base.css';
import './styles/forms.css';
import './styles/frame.css';
import './styles/speak.css';
import './styles/review.css';
import './styles/tables.css';
import './styles/print.css';
import './styles/runs.css';
import './styles/search.css';
import './styles/dog.css';
import './styles/watch.css';
import './styles/load.css';

const root = document.getElementById('app');
if (!root) throw new Error('index.html has no element with the id "app".');
render(<App />, root);
startSending();
void refreshStatus();
// Only in a secure context (this machine counts as one). Without it the pages work as well, as long as there is a connection.
if ('serviceWorker' in navigator) navigator.serviceWorker.register('/service-worker.js').catch(() => undefined);
