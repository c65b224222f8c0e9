import { plan } from '../../../../calc/plan/plan.ts';
import type { Point2, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { type Camera, fitted, toScreen } from '../../../../web/board/camera.ts';
import { sceneOf } from '../../../../web/board/scene/scene.ts';
import { nodeBoard } from './node-board.ts';
import type { Peer } from './peer.ts';
import { rawBoard } from './raw-board.ts';

const PEERS = { nodes: nodeBoard, raw: rawBoard };

let peer: Peer;
let camera: Camera;
const viewport = { width: window.innerWidth, height: window.innerHeight };

/** What the benchmark asks of the page. */
const bench = {
  open: (kind: keyof typeof PEERS, file: SiteFile): void => {
    const site = toSite(file);
    const scene = sceneOf(site, plan(site));
    camera = fitted(scene.extent, viewport, 40);
    peer = PEERS[kind](document.getElementById('board')!, scene, viewport, camera);
  },
  /** Looks at a place from so near; returns where it is in the window. */
  look: (at: Point2, scale: number): { x: number; y: number } => {
    camera = { x: at[0], y: at[1], scale };
    peer.look(camera);
    const { px, py } = toScreen(camera, viewport, at);
    return { x: px, y: py };
  },
};
export type PeerBench = typeof bench;

Object.assign(window, { bench });
