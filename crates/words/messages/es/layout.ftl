# layout
