import { createRoot } from 'react-dom/client';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no element "root"');
createRoot(root).render(<h1>Jigwright</h1>);
