/** The thread of a workbook: its tables in, its bytes out. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Table } from './table.ts';
import { workbookOf } from './workbook.ts';

parentPort?.postMessage(await workbookOf(workerData as readonly Table[]));
