/** The pages and their addresses. */
import { LocationProvider, Route, Router } from 'preact-iso';
import { Dog } from './pages/Dog.tsx';
import { Dogs } from './pages/Dogs.tsx';
import { Export } from './pages/Export.tsx';
import { Load } from './pages/Load.tsx';
import { Missing } from './pages/Missing.tsx';
import { Review } from './pages/Review.tsx';
import { Run } from './pages/Run.tsx';
import { Runs } from './pages/Runs.tsx';
import { Search } from './pages/Search.tsx';
import { Settings } from './pages/Settings.tsx';
import { Sheet } from './pages/Sheet.tsx';
import { Speak } from './pages/Speak.tsx';
import { Summary } from './pages/Summary.tsx';
import { Frame } from './parts/Frame.tsx';
import { refreshStatus } from './status.ts';

/** After a page has changed: its head for the screen reader, nothing left open, the status anew. */
function arrived(): void {
  for (const open of document.querySelectorAll<HTMLElement>('[popover]'))
    if (open.matches(':popover-open')) open.hidePopover();
  requestAnimationFrame(() => document.querySelector<HTMLElement>('#main h1')?.focus({ preventScroll: true }));
  void refreshStatus();
}

export function App() {
  return (
    <LocationProvider>
      <Frame>
        <Router onRouteChange={arrived}>
          <Route path="/" component={Speak} />
          <Route path="/review" component={Review} />
          <Route path="/review/:id" component={Review} />
          <Route path="/runs" component={Runs} />
          <Route path="/runs/:id" component={Run} />
          <Route path="/dogs" component={Dogs} />
          <Route path="/dogs/:id" component={Dog} />
          <Route path="/dogs/:id/sheet" component={Sheet} />
          <Route path="/load" component={Load} />
          <Route path="/search" component={Search} />
          <Route path="/export" component={Export} />
          <Route path="/summary" component={Summary} />
          <Route path="/settings" component={Settings} />
          <Route default component={Missing} />
        </Router>
      </Frame>
    </LocationProvider>
  );
}
