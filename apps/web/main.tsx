import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/tokens.css';
import './styles/base.css';
import './styles/drawing.css';
import './field/styles/frame.css';
import './field/styles/station.css';
import './field/styles/ask.css';
import './field/styles/numbers.css';
import './field/styles/verdict.css';
import './field/styles/dock.css';
import './field/styles/lists.css';
import './field/styles/sheet.css';
import './field/styles/notices.css';
import './field/styles/work.css';
import './field/styles/new-rig.css';
import './field/styles/fit.css';
import './field/styles/home.css';
import { App, warmUp } from './app';
import { startOffline } from './offline/register';
import { openSession } from './session/use-session';

const place = document.getElementById('page');
if (!place) throw new Error('the page has no place for the program');
const session = openSession();
void warmUp(session).then(() =>
  createRoot(place).render(
    <StrictMode>
      <App session={session} />
    </StrictMode>,
  ),
);
if (import.meta.env.PROD) void startOffline();
