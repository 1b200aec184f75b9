import { render } from 'preact';
import { readToShapes, type FromShapes, type ToShapes } from '../messages/shapesMessages';
import { linkToExtension } from '../shared/extensionLink';
import '../shared/view.css';
import '../shared/panel.css';
import { isRemembered, type Remembered } from './remembered';
import { Shapes } from './shapes';
import './shapes.css';

const link = linkToExtension<ToShapes, FromShapes, Remembered>(readToShapes, isRemembered);
const view = document.getElementById('view');
if (view) render(<Shapes link={link} />, view);
