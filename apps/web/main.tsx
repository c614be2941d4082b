import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/tokens.css';
import './styles/base.css';
import './styles/drawing.css';
import './styles/field.css';
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
