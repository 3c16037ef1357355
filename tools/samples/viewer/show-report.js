// Shows the landmarks and lines of an ElbowAssist report over its film, lets a person move them, and saves them as a
// report that the tool reads back. The library is Cornerstone3D with its own report adapters; nothing here is special
// to ElbowAssist except that its findings are coded in the scheme 99ELBOWASSIST.
import { init as initCore, metaData, imageLoader, utilities, RenderingEngine, Enums } from '@cornerstonejs/core';
import * as tools from '@cornerstonejs/tools';
import { adaptersSR } from '@cornerstonejs/adapters';
import dcmjs from 'dcmjs';
import { filmImage, filmMetadata } from './film.js';

const { MeasurementReport } = adaptersSR.Cornerstone3D;
const shown = { film: null, imageId: null, annotations: [] };

/** Opens a film and its report (both ArrayBuffers); gives the annotations in pixels of the film, (0,0) its top-left corner. */
export function open(filmFile, reportFile) {
  const film = natural(filmFile);
  const imageId = `film:${film.SOPInstanceUID}`;
  metaData.addProvider((type, id) => (id === imageId ? filmMetadata(film, type) : undefined), 10000);
  const byTool = MeasurementReport.generateToolState(
    natural(reportFile), { [`${film.SOPInstanceUID}:1`]: imageId }, metaData);
  Object.assign(shown, { film, imageId, annotations: Object.entries(byTool).flatMap(([tool, list]) => list.map(m => ({ tool, ...m }))) });
  return shown.annotations.map(describe);
}

/** Draws film and annotations into an element; a viewer would let the tools of the group move them. */
export async function show(element) {
  await initCore();
  tools.init();
  imageLoader.registerImageLoader('film', id => ({ promise: Promise.resolve(filmImage(shown.film, id)) }));
  const group = tools.ToolGroupManager.createToolGroup('readers');
  for (const tool of [tools.ProbeTool, tools.ArrowAnnotateTool, tools.CobbAngleTool]) {
    tools.addTool(tool);
    group.addTool(tool.toolName);
    group.setToolPassive(tool.toolName);
  }
  const engine = new RenderingEngine('film');
  engine.enableElement({ viewportId: 'film', element, type: Enums.ViewportType.STACK });
  group.addViewport('film', 'film');
  const viewport = engine.getViewport('film');
  await viewport.setStack([shown.imageId]);
  const frame = viewport.getFrameOfReferenceUID();
  for (const { annotation } of shown.annotations) {
    Object.assign(annotation.metadata, { FrameOfReferenceUID: frame });
    tools.annotation.state.addAnnotation(annotation, element);
  }
  viewport.render();
}

/** Moves every point of an annotation, as a person would with the mouse. */
export function move(index, dx, dy) {
  const { annotation } = shown.annotations[index];
  annotation.data.handles.points = annotation.data.handles.points.map(world => {
    const [x, y] = utilities.worldToImageCoords(shown.imageId, world);
    return utilities.imageToWorldCoords(shown.imageId, [x + dx, y + dy]);
  });
  return describe(shown.annotations[index]);
}

/** The annotations as a report of the person who moved them (ArrayBuffer). */
export function save(personName) {
  const data = Object.groupBy(shown.annotations, a => a.tool);
  const state = { [shown.imageId]: Object.fromEntries(Object.entries(data).map(([tool, list]) => [tool, {
    data: list.map(m => ({ ...m.annotation, finding: m.finding, findingSites: m.findingSites })),
  }])) };
  const report = MeasurementReport.generateReport(state, metaData, { PersonName: personName });
  return dcmjs.data.datasetToDict(report.dataset).write();
}

function natural(file) {
  const read = dcmjs.data.DicomMessage.readFile(file);
  const dataset = dcmjs.data.DicomMetaDictionary.naturalizeDataset(read.dict);
  dataset._meta = dcmjs.data.DicomMetaDictionary.namifyDataset(read.meta);
  return dataset;
}

function describe({ tool, finding, annotation }) {
  return {
    tool,
    finding: finding.CodeValue,
    label: annotation.data.label,
    points: annotation.data.handles.points.map(p => utilities.worldToImageCoords(shown.imageId, p)),
  };
}
