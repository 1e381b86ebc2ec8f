"""What is asked of nibs: flow, flex, smoothing, the setting of the feed; lines on paper."""
