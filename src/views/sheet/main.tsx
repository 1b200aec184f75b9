import { render } from 'preact';
import { readToSheet, type FromSheet, type ToSheet } from '../messages/sheetMessages';
import { linkToExtension } from '../shared/extensionLink';
import '../shared/view.css';
import '../shared/panel.css';
import { isRemembered, type Remembered } from './remembered';
import { Sheet } from './sheet';
import './sheet.css';

const link = linkToExtension<ToSheet, FromSheet, Remembered>(readToSheet, isRemembered);
const view = document.getElementById('view');
if (view) render(<Sheet link={link} />, view);
