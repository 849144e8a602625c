"""Pictures of cloth as rasters: worked panels and things come in, lit pictures and the bytes of their files go out."""
