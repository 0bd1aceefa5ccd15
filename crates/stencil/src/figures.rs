//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Sides of a sheet, metres.
    pub SHEET = "stencil.sheet";
    /// Trimmed off each side of it, metres.
    pub TRIM = "stencil.trim";
    /// Longest side of a plate, metres.
    pub CARRY = "stencil.carry";
    /// Overlap of two panels, metres.
    pub OVERLAP = "stencil.overlap";
    /// Most panels of a stencil.
    pub PANELS = "stencil.panels";
    /// A registration hole across, metres.
    pub HOLE = "stencil.hole";
    /// Plate round the openings, metres.
    pub MARGIN_ROLLER = "stencil.margin-roller";
    /// Plate round the openings, metres.
    pub MARGIN_BRUSH = "stencil.margin-brush";
    /// Plate round the openings, metres.
    pub MARGIN_SPRAY = "stencil.margin-spray";
    /// Greatest distance of two ties along an island's edge, metres.
    pub TIE_SPACING = "stencil.tie-spacing";
    /// Least ties of an island, and of a long one.
    pub TIE_COUNT = "stencil.tie-count";
    /// An island with a longer side is long, metres.
    pub TIE_LONG = "stencil.tie-long";
    /// Greatest share of the outline that ties take.
    pub TIE_SHARE = "stencil.tie-share";
    /// Least width of a tie in thicknesses.
    pub TIE_THICK = "stencil.tie-thick";
    /// Shapes this near one another are the same, metres.
    pub SAME = "stencil.same";
    /// A stroke of this length is rolled along chalk lines, metres.
    pub STROKE_LONG = "stencil.stroke-long";
    /// A stroke is so many times as long as broad.
    pub STROKE_SLIM = "stencil.stroke-slim";
    /// A solid of this area is taped, square metres.
    pub SOLID = "stencil.solid";
    /// Gap of two parts on a sheet beyond the kerf, metres.
    pub PART_GAP = "stencil.part-gap";
    /// Card.
    pub CARD_THICKNESS = "stencil.card-thickness";
    /// Card.
    pub CARD_TIE = "stencil.card-tie";
    /// Card.
    pub CARD_TONGUE = "stencil.card-tongue";
    /// Film.
    pub FILM_THICKNESS = "stencil.film-thickness";
    /// Film.
    pub FILM_TIE = "stencil.film-tie";
    /// Film.
    pub FILM_TONGUE = "stencil.film-tongue";
    /// Fluted polypropylene.
    pub FLUTED_THICKNESS = "stencil.fluted-thickness";
    /// Fluted polypropylene.
    pub FLUTED_TIE = "stencil.fluted-tie";
    /// Fluted polypropylene.
    pub FLUTED_TONGUE = "stencil.fluted-tongue";
    /// Solid polyethylene.
    pub SOLID_PE_THICKNESS = "stencil.solid-pe-thickness";
    /// Solid polyethylene.
    pub SOLID_PE_TIE = "stencil.solid-pe-tie";
    /// Solid polyethylene.
    pub SOLID_PE_TONGUE = "stencil.solid-pe-tongue";
    /// Hardboard.
    pub HARDBOARD_THICKNESS = "stencil.hardboard-thickness";
    /// Hardboard.
    pub HARDBOARD_TIE = "stencil.hardboard-tie";
    /// Hardboard.
    pub HARDBOARD_TONGUE = "stencil.hardboard-tongue";
    /// Width of a cut, metres.
    pub KERF_KNIFE = "stencil.kerf-knife";
    /// Width of a cut, metres.
    pub KERF_LASER = "stencil.kerf-laser";
    /// Width of a cut, metres.
    pub KERF_ROUTER = "stencil.kerf-router";
    /// Width of a cut, metres.
    pub KERF_JIGSAW = "stencil.kerf-jigsaw";
    /// How far a jigsaw wanders, metres.
    pub WANDER_JIGSAW = "stencil.wander-jigsaw";
    /// Joint of a cell, metres.
    pub JOINT = "look.joint";
    /// Narrowest opening, metres.
    pub LEAST = "look.least";
    /// Narrowest web, metres.
    pub WEB = "look.web";
    /// Cap height that glyphs are kept at, metres.
    pub CAP = "look.cap";
    /// Tie of a kept glyph, metres.
    pub TIE = "look.tie";
}
