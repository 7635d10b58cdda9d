export { arrowhead } from './arrow.ts';
export {
  type Block,
  type BookInfo,
  contentArea,
  type DraftSheet,
  type FlowInput,
  finishBook,
  flowPages,
} from './bookPages.ts';
export {
  balloon,
  balloonRadius,
  type Callout,
  type CalloutColumnInput,
  calloutColumn,
  note,
} from './callouts.ts';
export {
  type ChartBand,
  type ChartCurve,
  type ChartInput,
  type ChartLine,
  type ChartPoint,
  chart,
} from './chart.ts';
export { type AxisScale, type ChartAxis, niceEnd } from './chartAxis.ts';
export { type CheckBarInput, checkBar } from './checkBar.ts';
export { type CsvCell, csvOf } from './csv.ts';
export { type CutBend, type CutFile, type CutMark, type KerfOutlines, withKerf } from './cutFile.ts';
export {
  type DimensionText,
  type DimensionTextOptions,
  dimensionText,
  lengthInLine,
} from './dimensionText.ts';
export { dxfLayers, dxfOfPattern } from './dxf.ts';
export { fractionText } from './fractionText.ts';
export {
  glbOfMeshes,
  type MeshPart,
  type PartMesh,
  type SurfaceLook,
  type SurfaceRole,
  surfaceLooks,
} from './glb.ts';
export { type HatchInput, hatch } from './hatch.ts';
export { type SpreadLabel, type SpreadRange, spreadLabels } from './labelSpread.ts';
export {
  type AngleDimensionInput,
  angleDimension,
  centerMark,
  type DiameterLeaderInput,
  diameterLeader,
  type LeaderInput,
  leader,
} from './leader.ts';
export {
  type BaselineDimensionsInput,
  baselineDimensions,
  baselineStep,
  dimensionTextSize,
  type LinearDimensionInput,
  linearDimension,
} from './linearDimension.ts';
export { type OrdinateInput, ordinateDimensions } from './ordinate.ts';
export { type Orientation, type Paper, type PaperName, paper, printableArea } from './paper.ts';
export { svgOfPattern } from './patternSvg.ts';
export {
  type Deflate,
  type PdfMeta,
  type PdfWriter,
  pdfOfSheets,
  pdfWriter,
  type SheetFonts,
} from './pdf.ts';
export { fillColors, type PenStyle, penStyles, toneColors } from './pens.ts';
export {
  correctionOf,
  judgePrinter,
  type PrinterCorrection,
  type PrinterReading,
  type PrinterVerdict,
} from './printerCheck.ts';
export {
  circle,
  heightOf,
  inset,
  line,
  maskedText,
  moved,
  openPath,
  type PaperRect,
  polygon,
  rectangle,
  type TextStyle,
  text,
  widthOf,
} from './shapes.ts';
export type {
  CircleItem,
  FillRole,
  PaperPoint,
  PathItem,
  PathStep,
  PenRole,
  Sheet,
  SheetItem,
  TextItem,
} from './sheet.ts';
export { svgOfSheet } from './svgSheet.ts';
export {
  layoutTable,
  type Strip,
  type TableCell,
  type TableColumn,
  type TableInput,
  type TableLayout,
} from './table.ts';
export { groupTemplates } from './templateGroup.ts';
export type {
  HandMark,
  TemplateArrow,
  TemplateCheck,
  TemplateCircle,
  TemplateJob,
  TemplateLabel,
  TemplateLine,
  TemplateLoop,
  TemplatePiece,
} from './templateJob.ts';
export { type TemplateOptions, templateSheets } from './templates.ts';
export {
  boxesOverlap,
  missingCharacters,
  printable,
  sheetFont,
  type TextBox,
  type TextWeight,
  textBox,
  textWidth,
  wrapText,
} from './textMetrics.ts';
export { type TitleBlockInput, titleBlock, titleBlockHeight } from './titleBlock.ts';
export {
  type DrawingScale,
  type FitViewInput,
  fineScales,
  fitView,
  preferredScales,
  scaleOf,
  type View,
  viewCircle,
  viewLength,
  viewLine,
  viewLoop,
  viewPoint,
  viewPolygon,
  viewText,
} from './view.ts';
export type { DrawingContext } from './views/context.ts';
export { fitUpSheets } from './views/fitUpSheet.ts';
export { generalArrangementSheets } from './views/generalArrangement.ts';
export { ladderSheets } from './views/ladderSheet.ts';
export { plateCards } from './views/plateCards.ts';
export { plateTemplateJobs } from './views/plateTemplates.ts';
export { riderSheet } from './views/riderSheet.ts';
export { rideSheets } from './views/rideSheets.ts';
export type { SceneGroup, SceneInput, Sight } from './views/scene.ts';
export { sideSheet } from './views/sideSheet.ts';
export { type SideViewOptions, sideBounds, sideViewItems } from './views/sideView.ts';
export { stackSheets } from './views/stackSheets.ts';
export { strengthSheets } from './views/strengthSheets.ts';
export { topSheet } from './views/topSheet.ts';
export { type TopViewOptions, topBounds, topViewItems } from './views/topView.ts';
export { type TubeWork, tubeCards } from './views/tubeCards.ts';
export { tubeWrapJobs } from './views/tubeTemplates.ts';
