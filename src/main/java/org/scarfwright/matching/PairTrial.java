package org.scarfwright.matching;

import org.scarfwright.necks.NeckDesign;
import org.scarfwright.rack.Piece;

/** Two pieces tried as neck and head of one design; they may be one piece. */
record PairTrial(NeckDesign design, Piece neck, Piece head, ShopRules shop) {}
