import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './styles/tokens.css';
import './styles/base.css';
import './styles/drawing.css';
import './styles/field.css';
import { App } from './app';
import { startOffline } from './offline/register';

const place = document.getElementById('page');
if (!place) throw new Error('the page has no place for the program');
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
if (import.meta.env.PROD) void startOffline();
