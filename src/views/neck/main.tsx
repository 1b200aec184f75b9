import { render } from 'preact';
import '../shared/view.css';
import './neck.css';

const view = document.getElementById('view');
if (view) render(<p>Put the cursor into a tab.</p>, view);
