"""The vehicle drawn: plan and sides from a few proportions, its places hatched by their worst joint."""
