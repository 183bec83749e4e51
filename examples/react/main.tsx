import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { PlanForm } from './plan-form.js';

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <PlanForm />
  </StrictMode>,
);
